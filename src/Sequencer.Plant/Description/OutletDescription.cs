namespace Sequencer.Plant.Description;

/// <summary>A free outlet at the tank's floor: its bore and its coefficient of discharge.</summary>
public sealed record OutletDescription(double BoreMetres, double DischargeCoefficient);
