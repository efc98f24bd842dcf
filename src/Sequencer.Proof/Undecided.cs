using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof;

/// <summary>No answer, and why. Never to be shown as success.</summary>
/// <param name="Requirement">The requirement's name.</param>
/// <param name="Reason">The kind of reason.</param>
/// <param name="Words">The reason in words for a person.</param>
/// <param name="Effort">What was spent, in counts.</param>
public sealed record Undecided(
    string Requirement,
    UndecidedReason Reason,
    string Words,
    Effort Effort) : Verdict(Requirement, Effort)
{
    /// <summary>Of facts that were given, the first that some scan breaks.</summary>
    public ImmutableArray<Expression> NotKept { get; init; } = [];
}
