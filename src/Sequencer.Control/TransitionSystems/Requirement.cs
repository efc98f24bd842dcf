using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// What must hold in every scan of every run: <see cref="Holds"/>, over this scan's inputs and the
/// state before it. A bounded response is one too, through a monitor among the states.
/// <see cref="Statement"/> is the author's words.
/// </summary>
public sealed record Requirement(
    string Name,
    string Title,
    string Statement,
    RequirementKind Kind,
    Expression Holds,
    Origin Origin)
{
    /// <summary>The standard obligation that this is a case of; null for what the author or a construct of the program asks.</summary>
    public StandardObligation? Obligation { get; init; }

    /// <summary>
    /// Facts over the states that whoever wrote the requirement expects to help its proof. They say nothing about the requirement:
    /// a prover may try them, and must believe none.
    /// </summary>
    public ImmutableArray<Expression> Guesses { get; init; } = [];
}
