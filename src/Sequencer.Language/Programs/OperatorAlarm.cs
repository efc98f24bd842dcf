using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A message while the condition possibly holds.</summary>
public sealed record OperatorAlarm(string Name, string Message, Condition Condition, SourceSpan Span);
