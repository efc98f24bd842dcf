using System.Diagnostics;
using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Testing.Verifiers;

namespace Sequencer.Benchmarks;

/// <summary>
/// Our prover beside spin and z3 on the same systems, growing. A verifier that met its limit on a size is not asked for the next
/// ones. All times are processor time, as others may share the machine. A size where the better of them was faster is listed as a loss.
/// </summary>
internal sealed class VerifierBenchmark : Benchmark
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(120);
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(200);

    public override string Name => "verifiers";

    public override IEnumerable<Figure> Run()
    {
        List<Figure> losses = [];
        foreach ((string family, Func<int, bool, TransitionSystem> create, var sizes) in ScalingFamilies.All)
        {
            foreach (bool broken in (bool[])[false, true])
            {
                HashSet<OutsideVerifier> asked = [OutsideVerifier.Spin, OutsideVerifier.Z3];
                foreach (int size in sizes)
                {
                    TransitionSystem system = create(size, broken);
                    double start = Used();
                    bool? ours = Decide(system, out string engine);
                    double seconds = Used() - start;
                    string row = string.Create(CultureInfo.InvariantCulture, $"{size} {family}, {(broken ? "fails" : "holds")}: {engine}");
                    double best = double.PositiveInfinity;
                    foreach (OutsideVerifier outside in asked.ToArray())
                    {
                        OutsideAnswer answer = outside.Ask(system, Limit);
                        Demand(answer.Holds is null || answer.Holds == !broken, $"{row}: {outside} says otherwise");
                        best = answer.Holds is null ? best : Math.Min(best, answer.Seconds);
                        row += string.Create(CultureInfo.InvariantCulture, $" | {outside} {(answer.Holds is null ? "none in " : "")}{answer.Seconds:0.00} s");
                        if (answer.Holds is null)
                        {
                            asked.Remove(outside);
                        }
                    }

                    Demand(ours is null || ours == !broken, $"{row}: we say otherwise");
                    row += double.IsFinite(best) ? string.Create(CultureInfo.InvariantCulture, $" | {best / seconds:0.0} times | ours") : " | ours";
                    Figure figure = new(ours is null ? row + " none in" : row, seconds, "s");
                    yield return figure;
                    if (double.IsFinite(best) && (ours is null || seconds > best || (best > 10 && 10 * seconds > best)))
                    {
                        losses.Add(figure);
                    }
                }
            }
        }

        yield return new Figure("losses: slower than the better, or not ten times faster where it needs 10 s", losses.Count, string.Empty);
        foreach (Figure loss in losses)
        {
            yield return loss with { What = "loss: " + loss.What };
        }
    }

    private static bool? Decide(TransitionSystem system, out string engine)
    {
        double end = Used() + Limit.TotalSeconds;
        using CancellationTokenSource limit = new();
        using Timer look = new(_ => CancelAfter(end, limit), null, Look, Look);
        Verdict verdict = Prover.Decide(system, system.Requirements[0], ProofOptions.Default, null, limit.Token);
        engine = verdict switch { Holds holds => holds.Engine, Fails fails => fails.Engine, _ => "undecided" };
        return verdict switch { Holds => true, Fails => false, _ => null };
    }

    private static void CancelAfter(double end, CancellationTokenSource limit)
    {
        if (Used() > end)
        {
            limit.Cancel();
        }
    }

    private static double Used()
    {
        using Process own = Process.GetCurrentProcess();
        return own.TotalProcessorTime.TotalSeconds;
    }

    private static void Demand(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidOperationException(otherwise);
        }
    }
}
