using Sequencer.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>What is written to the plant at the end of a scan, from this scan's inputs and the state before it.</summary>
public sealed record OutputVariable(string Name, Expression Value, Origin Origin);
