using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record OutputFact(Output Output, OutputFactKind Kind, SourceSpan Span) : Condition(Span);
