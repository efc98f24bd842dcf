namespace Sequencer.Plant.Description;

/// <summary>
/// How a dosed reagent finds its way into the water that a probe sees: after a dead time, with a
/// first-order lag. Without agitation the lag is <paramref name="UnmixedLagSeconds"/>. <paramref name="PowerKilowatts"/> is what the
/// agitator puts into the water at full speed; 0 where it is not told.
/// </summary>
public sealed record MixingDescription(string? Agitator, double DeadTimeSeconds, double LagSeconds, double UnmixedLagSeconds, double PowerKilowatts = 0.0);
