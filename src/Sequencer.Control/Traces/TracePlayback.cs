using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Traces;

/// <summary>Runs a recorded trace again. Scans are numbered from 0.</summary>
public static class TracePlayback
{
    /// <summary>
    /// Plays the trace from the initial state. After each scan <paramref name="report"/> may read the
    /// stepper's outputs and observed values; it answers whether to go on.
    /// </summary>
    /// <returns>The number of scans played.</returns>
    /// <exception cref="ArgumentException">A segment has not one value for each input of the system.</exception>
    public static long Play(Trace trace, Stepper stepper, Func<Stepper, long, bool> report)
    {
        stepper.Initialise();
        return GoOn(trace.Segments.AsSpan(), stepper, 0, report);
    }

    /// <summary>Plays segments on from the states that the stepper has; the first scan has the number given.</summary>
    /// <returns>The number of the scan after the last one played.</returns>
    /// <exception cref="ArgumentException">A segment has not one value for each input of the system.</exception>
    public static long GoOn(ReadOnlySpan<TraceSegment> segments, Stepper stepper, long scan, Func<Stepper, long, bool> report)
    {
        foreach (TraceSegment segment in segments)
        {
            if (segment.Inputs.Length != stepper.Inputs.Length)
            {
                throw new ArgumentException($"a trace with {segment.Inputs.Length} inputs for a system with {stepper.Inputs.Length}", nameof(segments));
            }

            segment.Inputs.CopyTo(stepper.Inputs);
            for (int repeat = 0; repeat < segment.Scans; repeat++)
            {
                stepper.Step();
                scan++;
                if (!report(stepper, scan - 1))
                {
                    return scan;
                }
            }
        }

        return scan;
    }

    /// <summary>The first scan of the trace in which a Boolean expression is false, null if it always holds.</summary>
    public static long? FirstScanWhereFalse(Trace trace, TransitionSystem system, Expression expression) =>
        FirstScanWhereFalse(trace, new Interpreter(system, [expression]), 0);

    /// <summary>The same for one of the expressions that a stepper observes already.</summary>
    public static long? FirstScanWhereFalse(Trace trace, Stepper stepper, int observedIndex)
    {
        if (stepper.ObservedExpressions[observedIndex].Sort != Sort.Boolean)
        {
            throw new ArgumentException("only a Boolean can be false", nameof(observedIndex));
        }

        long? found = null;
        Play(trace, stepper, (running, scan) =>
        {
            found = running.Observed[observedIndex] == 0 ? scan : null;
            return found is null;
        });
        return found;
    }

    /// <summary>Scan, inputs and outputs where anything changes: what a person reads of a long run.</summary>
    public static ImmutableArray<TraceChange> Changes(Trace trace, Stepper stepper)
    {
        ImmutableArray<TraceChange>.Builder changes = ImmutableArray.CreateBuilder<TraceChange>();
        Play(trace, stepper, (running, scan) =>
        {
            bool same = changes.Count > 0
                && running.Outputs.AsSpan().SequenceEqual(changes[^1].Outputs.AsSpan())
                && running.Observed.AsSpan().SequenceEqual(changes[^1].Observed.AsSpan());
            if (!same)
            {
                changes.Add(new TraceChange(scan, [.. running.Inputs], [.. running.Outputs], [.. running.Observed]));
            }

            return true;
        });
        return changes.ToImmutable();
    }
}
