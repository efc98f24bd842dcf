using Sequencer.Simulation.Trials;

namespace Sequencer.Simulation.Pictures;

/// <summary>One outcome over all runs of a set, with the bounds that a consent gives it (null for none).</summary>
public sealed record DistributionPanel(string Title, string Unit, Distribution Spread, double? Low, double? High);
