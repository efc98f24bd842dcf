using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// Latches when its condition possibly holds; reset by the operator once the cause is gone.
/// <see cref="Group"/> names the group whose reset and first-out count; null is the unit's own.
/// </summary>
public sealed record Trip(
    string Name,
    string Title,
    Condition Condition,
    Reaction Reaction,
    BadSignal IfBad,
    string? Group,
    SourceSpan Span);
