namespace Sequencer.Simulation.Records;

/// <summary>A step active from one scan to another (exclusive); the end is null if it still was when the run ended.</summary>
public sealed record StepVisit(string Unit, string Step, long FromScan, long? ToScan);
