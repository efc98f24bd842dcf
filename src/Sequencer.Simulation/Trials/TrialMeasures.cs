using System.Collections.Immutable;

namespace Sequencer.Simulation.Trials;

/// <summary>
/// What is kept of each run of a set: values, the totals that ran over rims and that leaked, and limits on doses; and how long a run goes on
/// when a unit is at rest.
/// </summary>
public sealed record TrialMeasures(ImmutableArray<TrialValue> Values, ImmutableArray<string> Rims, ImmutableArray<string> Leaks, ImmutableArray<DoseLimit> Doses, double AfterRestSeconds);
