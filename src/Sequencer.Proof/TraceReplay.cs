using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof;

/// <summary>Judges a trace scan by scan on the interpreter, which no search engine shares.</summary>
internal static class TraceReplay
{
    private const int ScansBetweenLooks = 4096;

    /// <summary>
    /// Whether the assumptions hold in every scan, the requirement in every one but the last, and in the last not.
    /// </summary>
    public static bool FailsInLastScan(TransitionSystem system, Trace trace, Expression holds, Expression[] assumed, Budget budget)
    {
        Interpreter interpreter = new(system, [holds, .. assumed]);
        bool kept = true;
        bool failed = false;
        long played = TracePlayback.Play(trace, interpreter, (stepper, scan) =>
        {
            if (scan % ScansBetweenLooks == 0)
            {
                budget.ThrowIfCancelled();
            }

            kept = stepper.Observed.AsSpan(1).IndexOf(0L) < 0 && InRange(system, stepper.Inputs);
            failed = stepper.Observed[0] == 0;
            return kept && !failed;
        });
        return kept && failed && played == trace.Scans;
    }

    private static bool InRange(TransitionSystem system, long[] inputs)
    {
        for (int index = 0; index < inputs.Length; index++)
        {
            if (!system.Inputs[index].Range.Contains(inputs[index]))
            {
                return false;
            }
        }

        return true;
    }
}
