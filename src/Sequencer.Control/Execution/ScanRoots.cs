using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>What a scan has to compute, and nothing else.</summary>
internal static class ScanRoots
{
    public static IEnumerable<Expression> Of(TransitionSystem system, ImmutableArray<Expression> observed) =>
        [.. system.Outputs.Select(output => output.Value), .. observed, .. system.States.Select(state => state.Next)];
}
