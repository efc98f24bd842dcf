namespace Sequencer.Plant.Description;

/// <summary>
/// How a dosed reagent finds its way into the water that a probe sees: after a dead time, with a
/// first-order lag. Without agitation the lag is <paramref name="UnmixedLagSeconds"/>.
/// </summary>
public sealed record MixingDescription(string? Agitator, double DeadTimeSeconds, double LagSeconds, double UnmixedLagSeconds);
