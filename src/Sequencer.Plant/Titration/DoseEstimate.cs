namespace Sequencer.Plant.Titration;

/// <summary>Litres of reagent for each litre of water, and how sure that is.</summary>
/// <param name="Dose">L/L.</param>
/// <param name="Uncertainty">Twice the standard uncertainty, L/L.</param>
internal readonly record struct DoseEstimate(double Dose, double Uncertainty)
{
    /// <summary>
    /// From a titration: the model's dose; its uncertainty from leaving each point out in turn (jackknife), the model's error at the points, and an error of the
    /// probe, which counts as far as the dose changes with pH there, and that of the volumes.
    /// </summary>
    /// <param name="table">At least five points.</param>
    /// <param name="ph">The pH wanted, within those of the table.</param>
    /// <param name="strength">Equivalents of base in a litre of the reagent; negative of an acid.</param>
    /// <param name="probeError">Standard uncertainty of a pH reading.</param>
    /// <param name="scaleError">Standard uncertainty of the dose as a part of it: of volumes and strengths, which no point of the table tells.</param>
    public static DoseEstimate Of(TitrationTable table, double ph, double strength, double probeError, double scaleError)
    {
        AcidityModel model = AcidityModel.Fitted(table);
        double dose = model.Dose(ph, strength);
        double[] without = [.. table.Points.Select((_, left) => AcidityModel.Fitted(table with { Points = table.Points.RemoveAt(left) }).Dose(ph, strength))];
        double mean = without.Average();
        double jackknife = (without.Length - 1.0) / without.Length * without.Sum(one => (one - mean) * (one - mean));
        double slope = (model.Dose(ph + probeError, strength) - model.Dose(ph - probeError, strength)) / 2.0;
        double misfit = model.StandardError / strength;
        double scale = scaleError * dose;
        return new DoseEstimate(dose, 2.0 * Math.Sqrt(jackknife + (slope * slope) + (misfit * misfit) + (scale * scale)));
    }
}
