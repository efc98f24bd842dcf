using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Insight;

/// <summary>A fact of one scan: an expression of the system has a value (1 for a Boolean that is true).</summary>
public readonly record struct ScanFact(Expression Value, long Is);
