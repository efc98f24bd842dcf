using Sequencer.Control.Execution;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Plant;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>The larger demo site: a scan of its controller, and eight hours of controller and plant.</summary>
internal sealed class SiteBenchmark : Benchmark
{
    private const string Site = "marlpit-wharf";
    private const int Scans = 500;
    private const int Hours = 8;
    private const int StepsOfBaseline = 100;
    private static readonly int[] Circle = [.. Enumerable.Range(0, 64).Select(place => (place + 23) % 64)];

    public override string Name => "site";

    public override IEnumerable<Figure> Run()
    {
        DiagnosticBag diagnostics = new();
        LoadedSite site = SiteLoader.Load(new SiteFolder(RepositoryPath.Site(Site)), diagnostics)
            ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        Scenario batch = site.Scenarios.First(scenario => scenario.Name.StartsWith("normal", StringComparison.Ordinal));
        yield return new Figure("states", site.System.States.Length, string.Empty);
        yield return new Figure("100 dependent reads of an array (baseline)", Median.Nanoseconds(Scans, Follow), "ns");
        yield return new Figure("compiled stepper", Time(new CompiledStepper(site.System, []), site), "ns/scan");
        yield return new Figure("interpreter", Time(new Interpreter(site.System), site), "ns/scan");
        foreach (Scenario scenario in (Scenario[])[batch, batch with { DurationSeconds = Hours * 3600.0, Until = null, Expectations = [] }])
        {
            Played played = new(0, 0, 0, 0, 0);
            double time = Median.Milliseconds(() => played = Play(site, scenario));
            string hours = FormattableString.Invariant($"{played.Seconds / 3600:0.0} h with plant");
            yield return new Figure(hours, time / 1000, "s");
            yield return new Figure($"{hours}, real time over it", played.Seconds * 1000 / time, "times");
            yield return new Figure($"{hours}, scans that were not shortened", played.WholeScans, string.Empty);
            yield return new Figure($"{hours}, instructions of a shortened scan", played.Instructions, string.Empty);
            yield return new Figure($"{hours}, steps of the plant's equations", played.Steps, string.Empty);
            yield return new Figure($"{hours}, equilibria solved", played.Equilibria, string.Empty);
        }
    }

    private static Played Play(LoadedSite site, Scenario scenario)
    {
        DiagnosticBag diagnostics = new();
        SpecialisingStepper stepper = new(site.System, ClosedLoop.Observed(site.System, site.Metadata));
        ClosedLoop? loop = ScenarioFit.Join(site, stepper, scenario, diagnostics);
        ScenarioRun? run = loop is null ? null : ScenarioRun.Bind(loop, scenario, diagnostics);
        ScenarioResult result = run?.Play(null, CancellationToken.None)
            ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        (long steps, long equilibria) = loop?.Plant is PlantRun plant ? plant.Effort : (0, 0);
        double instructions = stepper.ShortenedInstructions / (double)(result.Record.Scans - stepper.WholeScans);
        return new Played(result.Record.Seconds, stepper.WholeScans, instructions, steps, equilibria);
    }

    /// <summary>Running units: started, with everything else at rest but the analogue signals, which wander.</summary>
    private static double Time(Stepper stepper, LoadedSite site)
    {
        Random random = new(1);
        int[] starts = [.. site.System.Inputs.Where(input => input.Name.EndsWith(".start", StringComparison.Ordinal)).Select(input => input.Index)];
        return Median.Nanoseconds(Scans, () =>
        {
            for (int scan = 0; scan < Scans; scan++)
            {
                Array.ForEach(starts, start => stepper.Inputs[start] = scan < 2 ? 1 : 0);
                if (scan % 50 == 0)
                {
                    foreach (int input in site.System.Inputs.Where(input => input.Range.Maximum > 1).Select(input => input.Index))
                    {
                        stepper.Inputs[input] = random.NextInt64(site.System.Inputs[input].Range.Minimum, site.System.Inputs[input].Range.Maximum + 1);
                    }
                }

                stepper.Step();
            }
        });
    }

    /// <summary>Each index hangs on the value found before, so nothing can be done ahead or at once.</summary>
    private static void Follow()
    {
        int place = 0;
        for (int index = 0; index < Scans * StepsOfBaseline; index++)
        {
            place = Circle[place];
        }

        GC.KeepAlive(place);
    }

    private readonly record struct Played(double Seconds, long WholeScans, double Instructions, long Steps, long Equilibria);
}
