using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>Instructions of one kind that lie behind one another, from the first to before the end.</summary>
internal readonly record struct InstructionRun(ExpressionKind Kind, int Start, int End);
