using Sequencer.Control.Traces;

namespace Sequencer.Proof;

/// <summary>A run from the initial state whose last scan is the first that breaks the requirement.</summary>
/// <param name="Requirement">The requirement's name.</param>
/// <param name="Trace">The run, for the whole system; it has been replayed.</param>
/// <param name="Engine">Which engine found it.</param>
/// <param name="IsShortest">No shorter run breaks the requirement: every shorter one was excluded.</param>
/// <param name="Effort">What the answer cost, in counts.</param>
public sealed record Fails(
    string Requirement,
    Trace Trace,
    string Engine,
    bool IsShortest,
    Effort Effort) : Verdict(Requirement, Effort);
