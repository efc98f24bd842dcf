using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Traces;

/// <summary>
/// Leaves of a run only what it needs: inputs that do not matter are at rest, others change as seldom as the end of the
/// run allows. Every try is replayed under all assumptions; the answer is replayed once more on the whole system.
/// </summary>
public static class TraceTidying
{
    /// <param name="system">The whole system.</param>
    /// <param name="end">What the run breaks in its last scan and in none before; one of the system's, or made for a run that reaches something.</param>
    /// <param name="trace">The run, for the whole system.</param>
    /// <param name="rests">What each input of the system is at rest.</param>
    /// <param name="cancellation">Leaves the run as it is by then.</param>
    /// <returns>A run that ends alike, of at most as many scans; the one given where nothing can be left out.</returns>
    public static Trace Tidy(
        TransitionSystem system, Requirement end, Trace trace, ImmutableArray<InputRest> rests, CancellationToken cancellation)
    {
        Slice slice = Slicer.Cut(system, end, AssumptionScope.All);
        InputTrial trial = new(slice.System, slice.Builder, slice.Narrow(trace), [.. slice.Inputs.Select(input => rests[input.Index])]);
        while (!cancellation.IsCancellationRequested && trial.Improve())
        {
        }

        Trace tidy = slice.Widen(trial.Best, [.. rests.Select(rest => rest.Value)]);
        Expression[] kept = [.. system.Assumptions.Select(assumption => assumption.Holds)];
        return TraceReplay.FailsInLastScan(system, tidy, end.Holds, kept, new Budget(long.MaxValue, CancellationToken.None)) ? tidy : trace;
    }
}
