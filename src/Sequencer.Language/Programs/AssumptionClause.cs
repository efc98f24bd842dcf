using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>What is taken for granted of the plant; where monitored, its breach asks for <see cref="Reaction"/>.</summary>
public sealed record AssumptionClause(
    string Name,
    string Title,
    AssumedFact Fact,
    bool Monitored,
    Reaction Reaction,
    SourceSpan Span);
