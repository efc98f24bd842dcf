namespace Sequencer.Testing.Verifiers;

/// <summary>What a verifier said.</summary>
/// <param name="Holds">Null where it gave no answer within its time and memory.</param>
/// <param name="Seconds">How long that took.</param>
/// <param name="Words">What it printed.</param>
public sealed record OutsideAnswer(bool? Holds, double Seconds, string Words);
