using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record SwitchFact(SwitchInput Input, SourceSpan Span) : Condition(Span);
