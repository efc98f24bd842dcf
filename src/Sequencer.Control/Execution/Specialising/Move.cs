namespace Sequencer.Control.Execution.Specialising;

/// <summary>A value that goes from a place in one array to a place in another.</summary>
internal readonly record struct Move(int From, int To);
