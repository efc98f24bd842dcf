using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Latches when its condition possibly holds; reset by the operator once the cause is gone.</summary>
public sealed record Trip(
    string Name,
    string Title,
    Condition Condition,
    Reaction Reaction,
    BadSignal IfBad,
    SourceSpan Span);
