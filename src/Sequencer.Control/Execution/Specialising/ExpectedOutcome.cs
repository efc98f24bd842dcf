namespace Sequencer.Control.Execution.Specialising;

/// <summary>A register that must have a value for a specialised scan to be right, and the instruction of the whole list that it stands for.</summary>
internal readonly record struct ExpectedOutcome(int Register, long Value, int Instruction);
