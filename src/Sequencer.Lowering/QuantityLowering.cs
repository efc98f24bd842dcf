using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Lowering;

/// <summary>Quantities as integer expressions.</summary>
internal static class QuantityLowering
{
    /// <summary>The integers of some quantities that meet in one comparison, all in one measure.</summary>
    public static Expression[] InCommonMeasure(UnitScan scan, ConditionPlace place, params IReadOnlyList<Quantity> quantities)
    {
        Rational measure = QuantityMeasure.Common(quantities, scan.ScanMilliseconds);
        return [.. quantities.Select(quantity => Counts(scan, place, quantity, measure))];
    }

    /// <summary>True when every reading in the quantities means something.</summary>
    public static Expression Usable(UnitScan scan, ConditionPlace place, params IReadOnlyList<Quantity> quantities) =>
        scan.Build.And(quantities.SelectMany(QuantityMeasure.Leaves).OfType<ReadingQuantity>().Select(reading => scan.Sight.Usable(reading.Input, place)));

    private static Expression Counts(UnitScan scan, ConditionPlace place, Quantity root, Rational measure) => scan.Build.Add(
        QuantityMeasure.Terms(root).Select(term => scan.Build.Scale(term.Negative ? -1 : 1, Leaf(scan, place, term.Leaf, measure))));

    /// <summary>How many steps of its own resolution a leaf other than a literal has.</summary>
    public static Expression Steps(UnitScan scan, ConditionPlace place, Quantity leaf) => leaf switch
    {
        ReadingQuantity reading => scan.Sight.Reading(reading.Input, place),
        ParameterQuantity parameter => scan.BatchValue(parameter.Parameter),
        TotalQuantity total => scan.Sight.Total(total.Output),
        RealQuantity real => scan.Reals.Value(real.Real.Name),
        CountQuantity count => scan.Sight.Count(count.Count),
        _ => throw new System.Diagnostics.UnreachableException($"no integer for {leaf.GetType().Name}"),
    };

    private static Expression Leaf(UnitScan scan, ConditionPlace place, Quantity leaf, Rational measure) => leaf is LiteralQuantity literal
        ? scan.Build.Constant((literal.Value / measure).ToInt64())
        : scan.Build.Scale((QuantityMeasure.Resolution(leaf, scan.ScanMilliseconds) / measure).ToInt64(), Steps(scan, place, leaf));
}
