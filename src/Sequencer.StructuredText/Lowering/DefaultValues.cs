using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Types;

namespace Sequencer.StructuredText.Lowering;

internal static class DefaultValues
{
    /// <summary>Some value of the type, to go on with where the real one has been reported as wrong.</summary>
    public static Expression Anything(this ExpressionBuilder builder, DataType type) => builder.Number(type, type.Default);

    /// <summary>A number of the type as a constant.</summary>
    public static Expression Number(this ExpressionBuilder builder, DataType type, long value) =>
        type.Sort == Sort.Boolean ? builder.Constant(value == 1) : builder.Constant(value);
}
