namespace Sequencer.Control.Execution.Specialising;

/// <summary>A state that grows by the same step in each scan that is as the last one.</summary>
internal readonly record struct Clock(int State, long Step);
