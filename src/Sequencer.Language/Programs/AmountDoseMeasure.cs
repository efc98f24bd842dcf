using Sequencer.Language.Units;

namespace Sequencer.Language.Programs;

/// <summary>The whole numbers of a dose by amount: scans of delivery, and the factors of its comparison.</summary>
public static class AmountDoseMeasure
{
    /// <summary>
    /// The most scans of delivery that the dose gives in a batch: the fewest that reach a fixed amount, or
    /// the most that stay within the maximum.
    /// </summary>
    public static long Most(AmountDoseAction dose, int scanMilliseconds)
    {
        Rational scan = QuantityMeasure.VolumeOfAScan(dose.Output, scanMilliseconds);
        return (long)(dose.Maximum is { } maximum ? (maximum.Value / scan).Floor() : (dose.Amount.Value / scan).Ceiling());
    }

    /// <summary>
    /// With n scans given and a basis of x steps, the dose is short of its share while
    /// <c>Given * n &lt; Basis * x</c>: a scan delivers v litres, the share is r = amount / per, one step of
    /// the basis is s litres, and both v and r s are whole multiples of one measure.
    /// </summary>
    public static (long Given, long Basis) Factors(AmountDoseAction dose, int scanMilliseconds)
    {
        if (dose.Per is not { } per || dose.Of is not { } basis)
        {
            throw new InvalidOperationException($"the dose of {dose.Output.Tag} is in proportion to nothing");
        }

        Rational scan = QuantityMeasure.VolumeOfAScan(dose.Output, scanMilliseconds);
        Rational share = dose.Amount.Value / per.Value * QuantityMeasure.Resolution(basis, scanMilliseconds);
        Rational measure = Rational.CommonMeasure(scan, share);
        return ((scan / measure).ToInt64(), (share / measure).ToInt64());
    }
}
