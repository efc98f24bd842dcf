namespace Sequencer.Proof.Traces;

/// <summary>What an input is while nothing happens.</summary>
/// <param name="Value">Its value at rest, in its range.</param>
/// <param name="IsMomentary">It is away from rest for a moment only, as a push button or the return of power.</param>
public readonly record struct InputRest(long Value, bool IsMomentary);
