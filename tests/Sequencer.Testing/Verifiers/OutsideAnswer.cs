namespace Sequencer.Testing.Verifiers;

/// <summary>What a verifier said.</summary>
/// <param name="Holds">Null where it gave no answer within its time and memory.</param>
/// <param name="Seconds">Processor time of all its programs: on a shared machine the clock on the wall says little.</param>
/// <param name="Words">What it printed.</param>
public sealed record OutsideAnswer(bool? Holds, double Seconds, string Words);
