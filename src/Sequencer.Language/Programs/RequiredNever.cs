namespace Sequencer.Language.Programs;

/// <summary>Never possibly so. Outputs mean what this scan writes.</summary>
public sealed record RequiredNever(Condition Condition) : RequiredFact;
