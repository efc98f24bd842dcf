using Sequencer.Language.Programs;

namespace Sequencer.Sites.Tuning;

/// <summary>How wide the windows are that end a step, with the parameters as they are where a batch changes nothing.</summary>
internal static class Windows
{
    /// <summary>In the unit of the dose's reading; null where no way out of the step asks for a window of it.</summary>
    public static double? Narrowest(UnitProgram unit, Step step, DoseAction dose)
    {
        double factor = dose.Signal.Unit.Factor.ToDouble();
        double[] widths =
        [
            .. TransitionOrder.Of(unit).Where(transition => transition.From.Contains(step.Number) && transition.When is not null)
                .SelectMany(transition => Within(transition.When!))
                .Where(fact => fact.Value is ReadingQuantity reading && reading.Input.Tag == dose.Signal.Tag)
                .Select(fact => Value(fact.Upper) - Value(fact.Lower)).OfType<double>().Select(width => width / factor).Where(width => width > 0.0),
        ];
        return widths.Length == 0 ? null : widths.Min();
    }

    /// <summary>In base units; null where it is read from the plant.</summary>
    public static double? Value(Quantity quantity) => quantity switch
    {
        LiteralQuantity literal => literal.Value.ToDouble(),
        ParameterQuantity parameter => parameter.Parameter.Default * parameter.Parameter.Resolution.ToDouble(),
        SumQuantity sum => Value(sum.Left) + ((sum.Subtract ? -1.0 : 1.0) * Value(sum.Right)),
        _ => null,
    };

    private static IEnumerable<WithinFact> Within(Condition condition) => condition switch
    {
        WithinFact within => [within],
        StaysFact stays => Within(stays.Condition),
        LingersFact lingers => Within(lingers.Condition),
        AllOf all => all.Conditions.SelectMany(Within),
        AnyOf any => any.Conditions.SelectMany(Within),
        _ => [],
    };
}
