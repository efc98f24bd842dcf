using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>What a vote says.</summary>
public sealed record VoteFact(Vote Vote, SourceSpan Span) : Condition(Span);
