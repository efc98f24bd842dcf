using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record Negation(Condition Condition, SourceSpan Span) : Condition(Span);
