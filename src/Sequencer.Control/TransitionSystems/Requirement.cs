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
    Origin Origin);
