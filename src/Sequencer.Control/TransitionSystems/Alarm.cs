using Sequencer.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>A message to the operator, raised in each scan in which <see cref="Raised"/> is true.</summary>
public sealed record Alarm(string Name, string Message, Expression Raised, Origin Origin);
