namespace Sequencer.Control.Execution;

/// <summary>
/// One instruction of an <see cref="InstructionList"/>: all four are places in the registers. A kind
/// with many operands is a chain of instructions with one target.
/// </summary>
internal readonly record struct Instruction(Operation Operation, int Target, int First, int Second, int Third);
