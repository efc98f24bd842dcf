using System.Collections.Immutable;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Titration;

/// <summary>A titration of a sample, and the batch that is to be brought to the same pH.</summary>
/// <param name="Titration">What was measured.</param>
/// <param name="BatchLitres">The batch.</param>
/// <param name="ReagentStrength">Equivalents of base in a litre of what the batch is dosed with; negative of an acid.</param>
/// <param name="Setpoints">The pH wanted, in the order of the file.</param>
/// <param name="ProbeError">Standard uncertainty of a pH reading.</param>
/// <param name="VolumeError">Standard uncertainty of volumes and strengths, as a part of them.</param>
public sealed record DoseTable(
    TitrationTable Titration,
    double BatchLitres,
    double ReagentStrength,
    ImmutableArray<Placed<double>> Setpoints,
    double ProbeError,
    double VolumeError)
{
    private readonly Lazy<DoseModel> _model = new(() => new DoseModel(Titration));

    /// <summary>Fitted once.</summary>
    public DoseModel Model => _model.Value;

    public double LowestPh => Titration.Points.Min(point => point.Ph);

    public double HighestPh => Titration.Points.Max(point => point.Ph);

    /// <summary>Litres of reagent for the batch, and how sure.</summary>
    public DoseEstimate Dose(double ph) => Model.Estimate(ph, ReagentStrength, ProbeError, VolumeError).Times(BatchLitres);
}
