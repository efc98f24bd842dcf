using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// From all the steps before it to all the steps after it; with none after it, these branches end, and
/// the unit is Complete when no step is active any more.
/// </summary>
public sealed record Transition(
    ImmutableArray<int> From,
    ImmutableArray<int> To,
    Condition When,
    SourceSpan Span)
{
    public WayCount? AtMost { get; init; }
}
