using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Traces;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites.Traces;

/// <summary>A run that breaks a requirement, or reaches what was asked for: tidied, told, and kept as files.</summary>
internal sealed class FailingRun
{
    private FailingRun(TraceStory story, Trace trace)
    {
        Story = story;
        Trace = trace;
        Words = TraceWords.Write(story);
    }

    public TraceStory Story { get; }

    public Trace Trace { get; }

    public string Words { get; }

    public static FailingRun Of(LoadedSite site, Requirement requirement, Fails fails, CancellationToken cancellation) =>
        Of(site, site.System, TraceEnd.Broken(requirement), requirement, fails.Trace, fails.IsShortest, cancellation);

    /// <param name="site">The site whose names are told.</param>
    /// <param name="system">What ran: the site's system, or one changed for a question about it.</param>
    /// <param name="end">What the run ends with, for people.</param>
    /// <param name="asRequirement">The same as something to be broken in the last scan.</param>
    /// <param name="trace">The run as it was found.</param>
    /// <param name="isShortest">No shorter run ends like this.</param>
    /// <param name="cancellation">Leaves the run as it was found, and says so.</param>
    public static FailingRun Of(
        LoadedSite site, TransitionSystem system, TraceEnd end, Requirement asRequirement, Trace trace, bool isShortest, CancellationToken cancellation)
    {
        ImmutableArray<InputRest> rests = [.. TraceInputs.Of(system, site.Metadata).Select(input => new InputRest(input.Rest, input.IsMomentary))];
        Trace tidy = TraceTidying.Tidy(system, asRequirement, trace, rests, cancellation);
        return new FailingRun(TraceStory.Of(system, site.Metadata, tidy, end, isShortest, !cancellation.IsCancellationRequested, site.Root), tidy);
    }

    /// <summary>Writes the run's files; the name of the one in words.</summary>
    public string Keep(OutputFolder folder)
    {
        string name = $"traces/{Story.End.Name}";
        using EmbeddedFont font = new();
        folder.Keep(name + ".txt", Words);
        if (TraceScenario.Write(Story) is { } scenario)
        {
            folder.Keep(name + ".yaml", scenario);
        }

        folder.Keep(name + ".svg", TimingDiagram.Svg(Story, font));
        folder.Keep(name + ".png", TimingDiagram.Png(Story, font));
        return name + ".txt";
    }
}
