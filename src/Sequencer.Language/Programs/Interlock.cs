using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// Forces outputs to their safe value, whoever demands them; in force in every state and in manual.
/// <see cref="Group"/> names the group whose reset counts; null is the unit's own.
/// </summary>
public sealed record Interlock(
    string Name,
    string Title,
    ImmutableArray<Output> Outputs,
    InterlockForm Form,
    Condition Condition,
    Condition? Release,
    bool NeedsReset,
    string? Group,
    SourceSpan Span)
{
    /// <summary>Analogue outputs that it forces too.</summary>
    public ImmutableArray<AnalogueOutput> Analogues { get; init; } = [];
}
