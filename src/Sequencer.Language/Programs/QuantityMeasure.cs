using Sequencer.Language.Units;

namespace Sequencer.Language.Programs;

/// <summary>
/// Quantities as whole numbers. Every leaf is a whole multiple of its own resolution; quantities that
/// meet are counted in the largest measure common to all their leaves, so nothing is ever rounded.
/// </summary>
public static class QuantityMeasure
{
    /// <summary>
    /// A total stops counting here: a day of 100 ms scans, far beyond any batch's maximum, so that a
    /// maximum that is not kept shows in the total.
    /// </summary>
    public const long LargestTotal = 864_000;

    /// <summary>The measure in which all the quantities are whole numbers, in base units.</summary>
    public static Rational Common(IEnumerable<Quantity> quantities, int scanMilliseconds) => quantities
        .SelectMany(Leaves)
        .Select(leaf => Resolution(leaf, scanMilliseconds))
        .Where(resolution => !resolution.IsZero)
        .DefaultIfEmpty(1)
        .Aggregate(Rational.CommonMeasure);

    /// <summary>The leaves of a sum, each with its sign.</summary>
    public static IReadOnlyList<(Quantity Leaf, bool Negative)> Terms(Quantity root)
    {
        Stack<(Quantity Quantity, bool Negative)> open = new([(root, false)]);
        List<(Quantity Leaf, bool Negative)> terms = [];
        while (open.TryPop(out (Quantity Quantity, bool Negative) next))
        {
            if (next.Quantity is SumQuantity sum)
            {
                open.Push((sum.Right, next.Negative != sum.Subtract));
                open.Push((sum.Left, next.Negative));
            }
            else
            {
                terms.Add(next);
            }
        }

        return terms;
    }

    public static IEnumerable<Quantity> Leaves(Quantity root) => Terms(root).Select(term => term.Leaf);

    /// <summary>The step in which a leaf counts, in base units; a literal is its own.</summary>
    public static Rational Resolution(Quantity leaf, int scanMilliseconds) => leaf switch
    {
        LiteralQuantity literal => literal.Value.Sign < 0 ? -literal.Value : literal.Value,
        ReadingQuantity reading => reading.Input.Resolution,
        ParameterQuantity parameter => parameter.Parameter.Resolution,
        TotalQuantity total => VolumeOfAScan(total.Output, scanMilliseconds),
        CountQuantity count => count.Count.Resolution,
        RealQuantity real => real.Real.Input.Resolution,
        _ => throw new System.Diagnostics.UnreachableException($"no resolution of {leaf.GetType().Name}"),
    };

    /// <summary>What an output delivers in one scan, in litres: the resolution of its total.</summary>
    public static Rational VolumeOfAScan(Output output, int scanMilliseconds)
    {
        Delivery delivery = output.Delivery ?? throw new InvalidOperationException($"{output.Tag} delivers nothing");
        return delivery.LitresPerSecond * new Rational(scanMilliseconds, 1000);
    }

    /// <summary>The number of whole scans of delivery that stay within a literal volume, and within what a total counts.</summary>
    public static long ScansWithin(Output output, Quantity volume, int scanMilliseconds)
    {
        LiteralQuantity literal = volume as LiteralQuantity
            ?? throw new InvalidOperationException("a maximum is a literal");
        return (long)System.Numerics.BigInteger.Min(LargestTotal, (literal.Value / VolumeOfAScan(output, scanMilliseconds)).Floor());
    }

    /// <summary>
    /// The most scans of delivery that the doses of the unit allow the output in a batch: the largest maximum
    /// of those toward a reading; with doses by amount only, all of them together, unless a step also runs
    /// or opens the output. Null without such a bound.
    /// </summary>
    public static long? LargestDose(UnitProgram unit, Output output, int scanMilliseconds)
    {
        long[] maxima =
        [
            .. unit.Steps.SelectMany(step => step.Actions).OfType<DoseAction>()
                .Where(dose => dose.Output.Tag == output.Tag)
                .Select(dose => ScansWithin(output, dose.Maximum, scanMilliseconds)),
        ];
        if (maxima.Length > 0)
        {
            return maxima.Max();
        }

        StepAction[] actions = [.. unit.Steps.SelectMany(step => step.Actions)];
        long[] amounts =
        [
            .. actions.OfType<AmountDoseAction>().Where(dose => dose.Output.Tag == output.Tag)
                .Select(dose => AmountDoseMeasure.Most(dose, scanMilliseconds)),
        ];
        bool alsoDriven = actions.OfType<DriveAction>().Any(drive => drive.On && drive.Output.Tag == output.Tag)
            || actions.OfType<KeepAction>().Any(keep => keep.On && keep.Output.Tag == output.Tag);
        return amounts.Length == 0 || alsoDriven ? null : amounts.Sum();
    }
}
