using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Lowering;

/// <summary>Quantities as integer expressions.</summary>
internal static class QuantityLowering
{
    /// <summary>The integers of some quantities that meet in one comparison, all in one measure.</summary>
    public static Expression[] InCommonMeasure(UnitScan scan, params IReadOnlyList<Quantity> quantities)
    {
        Rational measure = QuantityMeasure.Common(quantities, scan.ScanMilliseconds);
        return [.. quantities.Select(quantity => Counts(scan, quantity, measure))];
    }

    /// <summary>True when every reading in the quantities means something.</summary>
    public static Expression Usable(UnitScan scan, params IReadOnlyList<Quantity> quantities) =>
        scan.Build.And(quantities.SelectMany(QuantityMeasure.Leaves).OfType<ReadingQuantity>().Select(reading => scan.Usable(reading.Input)));

    private static Expression Counts(UnitScan scan, Quantity root, Rational measure) => scan.Build.Add(
        QuantityMeasure.Terms(root).Select(term => scan.Build.Scale(term.Negative ? -1 : 1, Leaf(scan, term.Leaf, measure))));

    /// <summary>How many steps of its own resolution a leaf other than a literal has.</summary>
    public static Expression Steps(UnitScan scan, Quantity leaf) => leaf switch
    {
        ReadingQuantity reading => scan.Reading(reading.Input),
        ParameterQuantity parameter => scan.BatchValue(parameter.Parameter),
        TotalQuantity total => scan.Total(total.Output),
        _ => throw new System.Diagnostics.UnreachableException($"no integer for {leaf.GetType().Name}"),
    };

    private static Expression Leaf(UnitScan scan, Quantity leaf, Rational measure) => leaf is LiteralQuantity literal
        ? scan.Build.Constant((literal.Value / measure).ToInt64())
        : scan.Build.Scale((QuantityMeasure.Resolution(leaf, scan.ScanMilliseconds) / measure).ToInt64(), Steps(scan, leaf));
}
