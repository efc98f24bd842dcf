using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// One instruction of an <see cref="InstructionList"/>: the places are those of
/// registers, 0 where the kind needs none. A kind with many operands is a tree of instructions.
/// </summary>
internal readonly record struct Instruction(ExpressionKind Kind, int Target, int First, int Second, int Third);
