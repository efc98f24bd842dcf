namespace Sequencer.Plant.Response;

/// <summary>One column of a recorded trend: a name, a unit that may be empty, and a value a row; what is no number is not one.</summary>
public sealed record TrendColumn(string Name, string Unit, double[] Values);
