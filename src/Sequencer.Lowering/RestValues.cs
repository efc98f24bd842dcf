using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>The value of an output that nobody demands.</summary>
internal static class RestValues
{
    /// <summary>The value in one row (<c>safe</c>, <c>held</c>, <c>emergency</c>), worked out once.</summary>
    public static Expression Value(UnitScan scan, Output output, RestValue rest, string row)
    {
        string name = $"{output.Tag}.{row}";
        if (!scan.RestValues.TryGetValue(name, out Expression? value))
        {
            value = scan.System.Define(name, Lower(scan, output, rest, name), new Origin(rest.Span));
            scan.RestValues.Add(name, value);
        }

        return value;
    }

    private static Expression Lower(UnitScan scan, Output output, RestValue rest, string name)
    {
        ExpressionBuilder build = scan.Build;
        if (rest.Last)
        {
            return scan.LastWritten(output);
        }

        if (rest.While is null)
        {
            return build.Constant(rest.Value);
        }

        Truth condition = ConditionLowering.Lower(scan, rest.While, new ConditionPlace(name));
        return build.IfThenElse(
            condition.Surely,
            build.Constant(rest.Value),
            build.IfThenElse(condition.Possibly, build.Constant(rest.IfBad), build.Constant(rest.Otherwise)));
    }
}
