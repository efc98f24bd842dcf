using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;

namespace Sequencer.Simulation.Traces;

/// <summary>
/// A run as it is told: what came in, what the program made of it, what it wrote, and why that ends the run. Everything
/// is read off the transition system by replaying the run; nothing here gives a construct a meaning.
/// </summary>
public sealed partial class TraceStory
{
    private TraceStory(TraceEnd end, TraceHistory history, DecisiveFacts facts, SiteMetadata site, ImmutableArray<TraceInput> inputs, bool isShortest, bool isTidied, string root)
    {
        End = end;
        History = history;
        Facts = facts;
        Site = site;
        Inputs = inputs;
        IsShortest = isShortest;
        IsTidied = isTidied;
        Root = root;
        Named = [.. Word().Matches(end.Statement).SelectMany(match => new[] { match.Value, match.Value[(match.Value.LastIndexOf('.') + 1)..] })];
        Units = [.. UnitPlaces.Of(history.System).Where(unit => facts.HasState(unit.StatePlace) || unit.Steps.Any(step => facts.HasState(step.Place)))];
        Outputs = [.. history.System.Outputs.Where(IsTold)];
        Moments = TraceMoments.Of(this);
        Reasons = TraceReasons.Of(this);
        Parts = TraceParts.Of(this);
    }

    public TraceEnd End { get; }

    public bool IsShortest { get; }

    /// <summary>Whether inputs that do not matter are at rest.</summary>
    public bool IsTidied { get; }

    public ImmutableArray<TraceMoment> Moments { get; }

    /// <summary>Why the last scan ends the run, a sentence each.</summary>
    public ImmutableArray<string> Reasons { get; }

    /// <summary>The lines of the program that took part, by file and line.</summary>
    public ImmutableArray<TracePart> Parts { get; }

    public SiteMetadata Site { get; }

    public long Scans => History.Scans;

    public int ScanMilliseconds => History.System.ScanMilliseconds;

    internal string Root { get; }

    internal TraceHistory History { get; }

    internal DecisiveFacts Facts { get; }

    internal ImmutableArray<TraceInput> Inputs { get; }

    /// <summary>The words of the statement, the names among them, with and without their units.</summary>
    internal ImmutableHashSet<string> Named { get; }

    /// <summary>The units that took part.</summary>
    internal ImmutableArray<UnitPlaces> Units { get; }

    /// <summary>The outputs that the statement names, and others that took part.</summary>
    internal ImmutableArray<OutputVariable> Outputs { get; }

    /// <summary>Tells a run.</summary>
    /// <param name="system">The whole system.</param>
    /// <param name="site">What its names stand for.</param>
    /// <param name="trace">The run, best when it is tidied; it ends in the scan in which the end comes.</param>
    /// <param name="end">What is broken or reached.</param>
    /// <param name="isShortest">No shorter run ends like this.</param>
    /// <param name="isTidied">Inputs that do not matter are at rest.</param>
    /// <param name="root">What is left out at the beginning of the paths of the program's files.</param>
    public static TraceStory Of(TransitionSystem system, SiteMetadata site, Trace trace, TraceEnd end, bool isShortest, bool isTidied, string root)
    {
        TraceHistory history = new(system, trace, system.Definitions.Where(definition => definition.Value.Sort == Sort.Boolean));
        return new TraceStory(end, history, DecisiveFacts.Of(history, end.Holds), site, TraceInputs.Of(system, site), isShortest, isTidied, root);
    }

    /// <summary>Whether the end speaks of this thing: of its name, or of its name without the unit.</summary>
    internal bool IsNamed(string name) => Named.Contains(name) || Named.Contains(name[(name.IndexOf('.', StringComparison.Ordinal) + 1)..]);

    /// <summary>An input that is away from rest at some time.</summary>
    internal bool Matters(TraceInput input) => History.Input(input.Variable.Index).Runs is var runs && (runs.Count > 1 || runs[0].Value != input.Rest);

    /// <summary>Whether an instrument or a device has failed, in this scan or before.</summary>
    internal bool HasFailed(string tag, long scan) => Inputs.Any(input =>
        input.Kind == TraceInputKind.Failure && input.Tag == tag && History.Input(input.Variable.Index).Runs.Any(run => run.Value == 1 && run.From <= scan));

    private bool IsTold(OutputVariable output) =>
        IsNamed(output.Name)
        || Facts.Definitions.ContainsKey(output.Name + ".demand")
        || History.System.States.Any(state => state.Variable.Name == output.Name + ".last" && Facts.HasState(state.Variable.Index));

    [GeneratedRegex(@"[A-Za-z_][\w.]*\w|[A-Za-z_]")]
    private static partial Regex Word();
}
