using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Types;

namespace Sequencer.StructuredText.Lowering;

/// <summary>A value at one point of the scan, from this scan's inputs and the state before it.</summary>
internal readonly record struct TypedExpression(Expression Value, DataType Type);
