using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The prompt was answered with this one of its answers, counted from 1.</summary>
public sealed record AnsweredFact(string Prompt, int Answer, SourceSpan Span) : Condition(Span);
