namespace Sequencer.Simulation.Metadata;

/// <summary>A value that a step keeps for the batch report: the state variable that holds it, and the one that says it is known.</summary>
public sealed record RecordMetadata(string Unit, string Step, string Title, string Variable, string Known);
