namespace Sequencer.Plant.Response;

/// <summary>One column of a recorded trend that holds words, as which steps were active.</summary>
public sealed record TrendWords(string Name, string[] Values);
