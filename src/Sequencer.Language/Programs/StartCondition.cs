using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Must surely hold for a start to be taken; the message tells the operator why it was refused.</summary>
public sealed record StartCondition(Condition Condition, string Message, SourceSpan Span);
