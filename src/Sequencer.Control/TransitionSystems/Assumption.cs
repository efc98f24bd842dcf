using Sequencer.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// What is taken for granted about inputs and their past: <see cref="Holds"/> is true in every scan
/// of every run that a verdict speaks of.
/// </summary>
public sealed record Assumption(string Name, string Title, Expression Holds, Origin Origin);
