using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The longest time in a step and what follows: a reaction, or, where <see cref="GoTo"/> is there, with an
/// alarm the way to that step (to none: the branch ends).
/// </summary>
public sealed record StepLimit(Duration Time, Reaction Reaction, ImmutableArray<int>? GoTo, string Message, SourceSpan Span)
{
    /// <summary>The one step that the limit leads to.</summary>
    public int? Target => GoTo is [var target] ? target : null;
}
