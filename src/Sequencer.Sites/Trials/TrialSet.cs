using System.Collections.Immutable;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Trials;

namespace Sequencer.Sites.Trials;

/// <summary>A set that is done: what its runs had and what came of each, in the order of their numbers; and the run without anything changed.</summary>
internal sealed record TrialSet(
    LoadedSite Site,
    SiteTrials Trials,
    TrialSettings Settings,
    TrialPlan Plan,
    ImmutableArray<RunSummary> Runs,
    ImmutableArray<ScenarioResult> Bases,
    ImmutableArray<RunSummary> BaseSummaries)
{
    public UnsafeEnd UnsafeOf(RunSummary run) => UnsafeEnds.Of(run, Trials.Measures, Site.Metadata.DischargeLimits);

    public string UnsafeWords(RunSummary run) => UnsafeEnds.Words(run, Trials.Measures, Site.Metadata.DischargeLimits);
}
