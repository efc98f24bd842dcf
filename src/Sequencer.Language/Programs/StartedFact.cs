using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The other unit has taken the start that this one asks for.</summary>
public sealed record StartedFact(string Unit, SourceSpan Span) : Condition(Span);
