namespace Sequencer.Control.Execution.Specialising;

/// <summary>In what a scan is not as a specialised one expects: in a state that should rest, or in the outcome of an instruction of the whole list.</summary>
internal readonly record struct Miss(int Place, bool IsState);
