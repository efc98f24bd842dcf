namespace Sequencer.Simulation.Plants;

/// <summary>A physical fact of the plant that no instrument need show: a volume, a true pH, a mass in a stream.</summary>
public sealed record PlantQuantity(string Name, string Unit, string Description);
