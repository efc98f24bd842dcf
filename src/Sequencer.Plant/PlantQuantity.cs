namespace Sequencer.Plant;

/// <summary>A name and the unit its values come in, as <c>TK201.volume</c> in <c>m3</c>.</summary>
public sealed record PlantQuantity(string Name, string Unit);
