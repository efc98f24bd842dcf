namespace Sequencer.Language.Programs;

/// <summary>The condition, which speaks of inputs alone, never holds.</summary>
public sealed record AssumedNever(Condition Condition) : AssumedFact;
