using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The first, or the second, of the pair is on duty in this scan.</summary>
public sealed record DutyFact(string Pair, bool First, SourceSpan Span) : Condition(Span);
