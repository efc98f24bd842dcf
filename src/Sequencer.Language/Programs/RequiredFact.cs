namespace Sequencer.Language.Programs;

public abstract record RequiredFact;
