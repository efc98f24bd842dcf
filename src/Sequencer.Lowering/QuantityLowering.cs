using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Lowering;

/// <summary>
/// Quantities as integers. Every leaf is a whole multiple of its own resolution; two sides that meet are
/// counted in the largest measure common to all their leaves, so nothing is ever rounded.
/// </summary>
internal static class QuantityLowering
{
    /// <summary>The integers of some quantities that meet in one comparison, all in one measure.</summary>
    public static Expression[] InCommonMeasure(UnitScan scan, params IReadOnlyList<Quantity> quantities)
    {
        Rational measure = quantities.SelectMany(Leaves).Select(leaf => Resolution(scan, leaf))
            .Where(resolution => !resolution.IsZero)
            .DefaultIfEmpty(1)
            .Aggregate(Rational.CommonMeasure);
        return [.. quantities.Select(quantity => Counts(scan, quantity, measure))];
    }

    /// <summary>True when every reading in the quantities means something.</summary>
    public static Expression Usable(UnitScan scan, params IReadOnlyList<Quantity> quantities) =>
        scan.Build.And(quantities.SelectMany(Leaves).OfType<ReadingQuantity>().Select(reading => scan.Usable(reading.Input)));

    /// <summary>The number of whole scans of delivery that stay within the volume.</summary>
    public static long ScansWithin(UnitScan scan, Output output, Quantity volume)
    {
        LiteralQuantity literal = volume as LiteralQuantity
            ?? throw new InvalidOperationException("a maximum is a literal");
        return (long)(literal.Value / scan.VolumeOfAScan(output)).Floor();
    }

    private static Expression Counts(UnitScan scan, Quantity root, Rational measure)
    {
        Stack<(Quantity Quantity, bool Negative)> open = new([(root, false)]);
        List<Expression> terms = [];
        while (open.TryPop(out (Quantity Quantity, bool Negative) next))
        {
            if (next.Quantity is SumQuantity sum)
            {
                open.Push((sum.Left, next.Negative));
                open.Push((sum.Right, next.Negative != sum.Subtract));
                continue;
            }

            Expression leaf = Leaf(scan, next.Quantity, measure);
            terms.Add(next.Negative ? scan.Build.Scale(-1, leaf) : leaf);
        }

        return scan.Build.Add(terms);
    }

    private static Expression Leaf(UnitScan scan, Quantity leaf, Rational measure)
    {
        long factor = (Resolution(scan, leaf) / measure).ToInt64();
        return leaf switch
        {
            LiteralQuantity literal => scan.Build.Constant((literal.Value / measure).ToInt64()),
            ReadingQuantity reading => scan.Build.Scale(factor, scan.Reading(reading.Input)),
            ParameterQuantity parameter => scan.Build.Scale(factor, scan.BatchValue(parameter.Parameter)),
            TotalQuantity total => scan.Build.Scale(factor, scan.Total(total.Output)),
            _ => throw new System.Diagnostics.UnreachableException($"no integer for {leaf.GetType().Name}"),
        };
    }

    private static Rational Resolution(UnitScan scan, Quantity leaf) => leaf switch
    {
        LiteralQuantity literal => literal.Value.Sign < 0 ? -literal.Value : literal.Value,
        ReadingQuantity reading => reading.Input.Resolution,
        ParameterQuantity parameter => parameter.Parameter.Resolution,
        TotalQuantity total => scan.VolumeOfAScan(total.Output),
        _ => throw new System.Diagnostics.UnreachableException($"no resolution of {leaf.GetType().Name}"),
    };

    private static IEnumerable<Quantity> Leaves(Quantity root)
    {
        Stack<Quantity> open = new([root]);
        while (open.TryPop(out Quantity? quantity))
        {
            if (quantity is SumQuantity sum)
            {
                open.Push(sum.Left);
                open.Push(sum.Right);
            }
            else
            {
                yield return quantity;
            }
        }
    }
}
