namespace Sequencer.Plant.Titration;

/// <summary>
/// A titration's acidity model, and those of the same titration without some of its points, each by itself or a fortieth of them at a time (jackknife): as far as they
/// differ the dose is unsure.
/// </summary>
public sealed class DoseModel
{
    private const int MostLeftOut = 40;

    /// <summary>pH; within as much on both sides of its pK a weak acid gives up 82 % of its protons, so that without a point there it would not be seen.</summary>
    private const double Near = 1.0;

    private readonly AcidityModel[] _without;
    private readonly double[] _read;

    /// <param name="table">At least five points.</param>
    public DoseModel(TitrationTable table)
    {
        Whole = AcidityModel.Fitted(table);
        _read = [.. table.Points.Select(point => point.Ph)];
        int groups = Math.Min(MostLeftOut, table.Points.Length);
        _without = [.. Enumerable.Range(0, groups).Select(left => AcidityModel.Fitted(table with { Points = [.. table.Points.Where((_, place) => place % groups != left)] }))];
    }

    public AcidityModel Whole { get; }

    /// <summary>
    /// The model's dose, and twice the root of five variances: of the dose without some points, of the points about the model, of the probe, which counts as far as
    /// the dose changes with pH there, of volumes and strengths, and, where no point is near, of what the water takes between those on either side, of which anything may be (a rectangular distribution).
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
        Unread? between = Between(ph, strength);
        double hidden = (between?.Litres ?? 0.0) / Math.Sqrt(12.0);
        return new DoseEstimate(dose, 2.0 * Math.Sqrt(jackknife + (slope * slope) + (misfit * misfit) + (scale * scale) + (hidden * hidden))) { Between = between };
    }

    private Unread? Between(double ph, double strength)
    {
        if (_read.Any(read => Math.Abs(read - ph) <= Near))
        {
            return null;
        }

        double low = _read.Where(read => read < ph).Max();
        double high = _read.Where(read => read > ph).Min();
        return new Unread(low, high, Math.Abs(Whole.Dose(high, strength) - Whole.Dose(low, strength)));
    }
}
