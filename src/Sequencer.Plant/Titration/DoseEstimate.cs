namespace Sequencer.Plant.Titration;

/// <summary>Litres of reagent, for each litre of water or for a batch, and how sure that is.</summary>
/// <param name="Dose">Litres.</param>
/// <param name="Uncertainty">Twice the standard uncertainty, litres.</param>
public readonly record struct DoseEstimate(double Dose, double Uncertainty)
{
    /// <summary>The points on either side of a pH that none lies near to, and what is added between them, litres; null where one does.</summary>
    public Unread? Between { get; init; }

    public DoseEstimate Times(double batch) =>
        new(Dose * batch, Uncertainty * batch) { Between = Between is { } between ? between with { Litres = between.Litres * batch } : null };
}
