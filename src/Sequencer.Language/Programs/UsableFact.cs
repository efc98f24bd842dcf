using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The reading means something: never unknown itself.</summary>
public sealed record UsableFact(AnalogueInput Input, SourceSpan Span) : Condition(Span);
