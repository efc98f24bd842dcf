using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record ConstantCondition(bool Value, SourceSpan Span) : Condition(Span);
