using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>Where the value of each root of a scan goes; one expression may have several places.</summary>
internal static class ScanTargets
{
    public static ILookup<Expression, ScanTarget> Of(TransitionSystem system, ImmutableArray<Expression> observed)
    {
        IEnumerable<(Expression Value, ScanTarget Target)> all =
        [
            .. system.Outputs.Select((output, index) => (output.Value, new ScanTarget(TargetArray.Outputs, index))),
            .. observed.Select((expression, index) => (expression, new ScanTarget(TargetArray.Observed, index))),
            .. system.States.Select((state, index) => (state.Next, new ScanTarget(TargetArray.NextStates, index))),
        ];
        return all.ToLookup(pair => pair.Value, pair => pair.Target);
    }
}
