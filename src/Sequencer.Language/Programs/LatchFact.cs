using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record LatchFact(string Latch, SourceSpan Span) : Condition(Span);
