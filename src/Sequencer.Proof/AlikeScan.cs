using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof;

/// <summary>What says of a scan, over its inputs and the states before it, that it leaves alike what is compared.</summary>
/// <param name="Same">So in a scan that leaves it alike, and only then.</param>
/// <param name="Enough">Where this is so, <paramref name="Same"/> is too: it speaks of no more than the places where the two are not word for word the same.</param>
public sealed record AlikeScan(Expression Same, Expression Enough);
