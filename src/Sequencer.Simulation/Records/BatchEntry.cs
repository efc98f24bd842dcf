namespace Sequencer.Simulation.Records;

/// <summary>A line of a batch record: a value that a step kept, or an answer, with its scan where that is known.</summary>
public sealed record BatchEntry(string Step, string What, string Value, long? Scan);
