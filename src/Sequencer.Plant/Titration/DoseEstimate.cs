namespace Sequencer.Plant.Titration;

/// <summary>Litres of reagent, for each litre of water or for a batch, and how sure that is.</summary>
/// <param name="Dose">Litres.</param>
/// <param name="Uncertainty">Twice the standard uncertainty, litres.</param>
public readonly record struct DoseEstimate(double Dose, double Uncertainty);
