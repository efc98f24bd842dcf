using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>True from <see cref="Raise"/> on for as long as <see cref="Keep"/> holds, the same comparison less the deadband.</summary>
public sealed record DeadbandFact(CompareFact Raise, CompareFact Keep, SourceSpan Span) : Condition(Span);
