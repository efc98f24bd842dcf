using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>What a search in rings came to.</summary>
internal abstract record RingOutcome
{
    /// <summary>A shortest failing run.</summary>
    internal sealed record Failing(Trace Trace) : RingOutcome;

    /// <summary>All states were reached and none of them fails: an invariant over the states, and how many rings there were.</summary>
    internal sealed record Reached(Expression Invariant, int Rings) : RingOutcome;

    /// <summary>No answer within the limits; the one that was met, in words.</summary>
    internal sealed record Limited(string Words) : RingOutcome;
}
