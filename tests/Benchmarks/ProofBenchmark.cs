using System.Diagnostics;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Sites;
using Sequencer.Sites.Folders;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>Every requirement of every demo site, one after the other: what each costs.</summary>
internal sealed class ProofBenchmark : Benchmark
{
    private const double WorthNaming = 0.5;

    public override string Name => "prove";

    public override IEnumerable<Figure> Run()
    {
        foreach (string name in (Environment.GetEnvironmentVariable("GOALS") ?? "fernhollow marlpit-wharf quillgate sedgemere").Split(' '))
        {
            DiagnosticBag diagnostics = new();
            LoadedSite site = SiteLoader.Load(new SiteFolder(RepositoryPath.Site(name)), diagnostics)
                ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
            TransitionSystem system = site.ProofSystem;
            double all = 0;
            foreach (Requirement requirement in system.Requirements.Take(Environment.GetEnvironmentVariable("GOALS") is null ? int.MaxValue : 0))
            {
                Stopwatch watch = Stopwatch.StartNew();
                using CancellationTokenSource patience = new(TimeSpan.FromSeconds(30));
                Verdict verdict = Prover.Decide(system, requirement, ProofOptions.Default, null, patience.Token);
                double seconds = watch.Elapsed.TotalSeconds;
                all += seconds;
                if (seconds > WorthNaming || verdict is not Holds)
                {
                    yield return new Figure($"{requirement.Name}: {verdict.GetType().Name}, {verdict.Effort.States} states, {verdict.Effort.Queries} queries", seconds, "s");
                }
            }

            yield return new Figure($"{name}: {system.Requirements.Length} requirements", all, "s");
            Stopwatch search = Stopwatch.StartNew();
            using CancellationTokenSource enough = new(TimeSpan.FromSeconds(60));
            foreach (GoalVerdict verdict in GoalProver.DecideAll(system, system.Goals, ProofOptions.Default, null, new Tell(search), enough.Token).Where(verdict => verdict is not Reached))
            {
                yield return new Figure($"{verdict.Goal.Name}: {verdict.GetType().Name}", 1, "");
            }

            yield return new Figure($"{name}: {system.Goals.Length} goals", search.Elapsed.TotalSeconds, "s");
        }
    }

    private sealed class Tell(Stopwatch watch) : IProgress<ProofProgress>
    {
        public void Report(ProofProgress value) => Console.Error.WriteLine($"{watch.Elapsed.TotalSeconds:0.00} {value.Requirement} {value.Engine} {value.Depth}");
    }
}
