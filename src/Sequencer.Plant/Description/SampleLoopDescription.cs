namespace Sequencer.Plant.Description;

/// <summary>A loop that brings water from a tank past a probe, so long as its pump runs and the tank holds enough.</summary>
public sealed record SampleLoopDescription(
    string Name,
    string From,
    string Pump,
    double FlowLitresPerSecond,
    double DelaySeconds,
    double NeedsLitres);
