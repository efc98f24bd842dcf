using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The protection is overridden in this scan.</summary>
public sealed record OverrideFact(string Protection, SourceSpan Span) : Condition(Span);
