using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record CompareFact(Quantity Left, Comparison Comparison, Quantity Right, SourceSpan Span) : Condition(Span);
