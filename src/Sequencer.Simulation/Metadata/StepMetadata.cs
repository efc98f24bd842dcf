namespace Sequencer.Simulation.Metadata;

/// <summary>A step as its author wrote it; times in seconds, null where nothing is stated.</summary>
public sealed record StepMetadata(
    string Unit,
    string Step,
    string Title,
    double? ExpectedSeconds = null,
    double? LimitSeconds = null);
