using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>True now and surely not so the scan before (rising), or the reverse (falling); false on the first scan.</summary>
public sealed record EdgeFact(Condition Condition, bool Rising, SourceSpan Span) : Condition(Span);
