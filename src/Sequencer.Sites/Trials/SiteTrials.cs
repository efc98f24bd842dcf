using System.Collections.Immutable;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;

namespace Sequencer.Sites.Trials;

/// <summary>A site's trials, bound to the site: everything that they name is there.</summary>
internal sealed record SiteTrials(
    TrialDescription Description,
    ImmutableArray<Scenario> Scenarios,
    ImmutableArray<(string Name, ImmutableArray<ParameterSetting> Settings)> Recipes,
    ImmutableArray<Tolerance> Tolerances,
    ImmutableArray<string> Faults,
    TrialMeasures Measures);
