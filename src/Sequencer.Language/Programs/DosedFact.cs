using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The dose by amount of the step has given its share of this batch.</summary>
public sealed record DosedFact(Output Output, int Step, SourceSpan Span) : Condition(Span);
