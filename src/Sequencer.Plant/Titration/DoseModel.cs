namespace Sequencer.Plant.Titration;

/// <summary>
/// A titration's acidity model, and those of the same titration without some of its points, each by itself or a fortieth of them at a time (jackknife): as far as they
/// differ the dose is unsure.
/// </summary>
public sealed class DoseModel
{
    private const int MostLeftOut = 40;

    private readonly AcidityModel[] _without;

    /// <param name="table">At least five points.</param>
    public DoseModel(TitrationTable table)
    {
        Whole = AcidityModel.Fitted(table);
        int groups = Math.Min(MostLeftOut, table.Points.Length);
        _without = [.. Enumerable.Range(0, groups).Select(left => AcidityModel.Fitted(table with { Points = [.. table.Points.Where((_, place) => place % groups != left)] }))];
    }

    public AcidityModel Whole { get; }

    /// <summary>
    /// The model's dose, and twice the root of four variances: of the dose without some points, of the points about the model, of the probe, which counts as far as
    /// the dose changes with pH there, and of volumes and strengths.
    /// </summary>
    /// <param name="ph">The pH wanted, within those of the table.</param>
    /// <param name="strength">Equivalents of base in a litre of the reagent; negative of an acid.</param>
    /// <param name="probeError">Standard uncertainty of a pH reading.</param>
    /// <param name="scaleError">Standard uncertainty of volumes and strengths, as a part of them: no point of the table tells it.</param>
    public DoseEstimate Estimate(double ph, double strength, double probeError, double scaleError)
    {
        double dose = Whole.Dose(ph, strength);
        double[] without = Array.ConvertAll(_without, model => model.Dose(ph, strength));
        double mean = without.Average();
        double jackknife = (without.Length - 1.0) / without.Length * without.Sum(one => (one - mean) * (one - mean));
        double slope = (Whole.Dose(ph + probeError, strength) - Whole.Dose(ph - probeError, strength)) / 2.0;
        double misfit = Whole.StandardError / strength;
        double scale = scaleError * dose;
        return new DoseEstimate(dose, 2.0 * Math.Sqrt(jackknife + (slope * slope) + (misfit * misfit) + (scale * scale)));
    }
}
