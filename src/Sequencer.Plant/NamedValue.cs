namespace Sequencer.Plant;

/// <summary>A quantity or total with where its value comes from.</summary>
internal sealed record NamedValue(PlantQuantity Quantity, Func<double> Value);
