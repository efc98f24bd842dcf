namespace Sequencer.Language.Programs;

/// <summary>Surely so in every scan in which <see cref="While"/> possibly holds (in every scan, without one).</summary>
public sealed record RequiredAlways(Condition Condition, Condition? While) : RequiredFact;
