namespace Sequencer.Plant.Description;

/// <summary>
/// A line that keeps reagent in it when its pump stops, until it is flushed into the tank. Slurry
/// that stands in it for longer than <paramref name="SetsAfterSeconds"/> blocks it (null: never).
/// </summary>
public sealed record DosingLineDescription(string Name, double HoldsLitres, double? SetsAfterSeconds);
