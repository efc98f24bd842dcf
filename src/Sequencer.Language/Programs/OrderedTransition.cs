using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A transition under its name (<c>step10.go_20</c>); without a condition it is the way out of its step's limit.</summary>
public sealed record OrderedTransition(
    string Name,
    ImmutableArray<int> From,
    ImmutableArray<int> To,
    Condition? When,
    SourceSpan Span)
{
    public WayCount? AtMost { get; init; }
}
