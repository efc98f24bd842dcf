namespace Sequencer.Simulation.Records;

/// <summary>Something worth a line in the batch report, in the scan in which it was seen.</summary>
public sealed record RunEvent(long Scan, RunEventKind Kind, string Subject, string Words);
