namespace Sequencer.Proof.Reaching;

/// <summary>A place at which a goal was reached, and the place from which it was looked for.</summary>
internal sealed record Arrival(Place From, Place At);
