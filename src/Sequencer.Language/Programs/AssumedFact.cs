namespace Sequencer.Language.Programs;

public abstract record AssumedFact;
