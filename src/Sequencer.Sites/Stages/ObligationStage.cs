using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites.Stages;

/// <summary>What every unit owes without being asked (<c>spec/obligations.md</c>), and whether each step and transition can be reached.</summary>
internal static class ObligationStage
{
    private const string Stage = "obligations";

    /// <summary>Looks for the ways in a thread of its own: it is one thread's work, and beside it the proofs get on.</summary>
    public static Task<ImmutableArray<GoalVerdict>> SearchForWays(LoadedSite site, ProofSettings settings, IProgress<StageProgress> progress, CancellationToken cancellation)
    {
        TransitionSystem system = site.ProofSystem;
        ImmutableArray<Goal> goals = [.. system.Goals.Where(goal => settings.Only.Count == 0 || settings.Only.Any(name => ProofStage.IsMeant(goal.Name, name)))];
        return Task.Factory.StartNew(
            () => GoalProver.DecideAll(system, goals, ProofOptions.Default, settings.Memory, new ProofWords(Stage, progress), cancellation),
            CancellationToken.None,
            TaskCreationOptions.LongRunning,
            TaskScheduler.Default);
    }

    /// <param name="site">The site.</param>
    /// <param name="settings">Which obligations are asked for.</param>
    /// <param name="searched">The ways, which are waited for.</param>
    /// <param name="folder">Where certificates and pages go.</param>
    /// <param name="progress">Told what is at work.</param>
    /// <param name="cancellation">Leaves what is not finished undecided.</param>
    public static StageReport Run(
        LoadedSite site,
        ProofSettings settings,
        Task<ImmutableArray<GoalVerdict>> searched,
        OutputFolder? folder,
        IProgress<StageProgress> progress,
        CancellationToken cancellation,
        out ImmutableArray<Verdict> verdicts)
    {
        TransitionSystem system = site.ProofSystem;
        ImmutableArray<Requirement> owed = ProofStage.Chosen([.. system.Requirements.Where(requirement => requirement.Obligation is not null)], settings);
        verdicts = Prover.DecideAll(system, owed, ProofOptions.Default, settings.Degree, settings.Memory, new ProofWords(Stage, progress), cancellation);
        ImmutableArray<RequirementEvidence> shown = RequirementEvidence.OfAll(site, system, owed, verdicts, folder, settings.Degree, cancellation);
        ImmutableArray<GoalVerdict> ways = searched.GetAwaiter().GetResult();

        List<string> lines = [];
        JsonArray requirements = [];
        IEnumerable<(Requirement Requirement, Verdict Verdict, RequirementEvidence Evidence)> all = owed.Zip(verdicts, shown);
        foreach (IGrouping<StandardObligation, (Requirement Requirement, Verdict Verdict, RequirementEvidence Evidence)> group in all.GroupBy(one => one.Requirement.Obligation!))
        {
            Verdict[] cases = [.. group.Select(one => one.Verdict)];
            bool holds = cases.All(verdict => verdict is Holds);
            lines.Add($"{(holds ? "holds" : ""),-9} {group.Key.Unit}: {group.Key.Words}{(holds && cases.Length == 1 ? "" : $": {ProofStage.Count(cases)}{(holds ? "" : ProofStage.Rest(cases))}")}");
            foreach ((_, Verdict verdict, RequirementEvidence evidence) in group)
            {
                requirements.Add(evidence.Json());
                lines.AddRange(verdict is Holds ? [] : evidence.Lines());
            }
        }

        lines.AddRange(WayLines(site, ways));
        folder?.Keep(WaysPage.Name, WaysPage.Write(site, ways));
        JsonObject json = new() { ["requirements"] = requirements, ["goals"] = new JsonArray([.. ways.Select(way => Json(site, way))]) };
        string headline = string.Create(
            CultureInfo.InvariantCulture,
            $"{ProofStage.Count(verdicts)} hold{ProofStage.Rest(verdicts)}; {ways.Count(way => way is Reached)} of {ways.Length} steps and transitions can be reached");
        return new StageReport(Stage, Worst(verdicts, ways), headline, lines, json);
    }

    private static Outcome Worst(ImmutableArray<Verdict> verdicts, ImmutableArray<GoalVerdict> ways) => Outcomes.Worst(
    [
        ProofStage.OutcomeOf(verdicts),
        ways.Any(way => way is Unreachable) ? Outcome.Fails : ways.Any(way => way is NotFound) ? Outcome.Undecided : Outcome.Holds,
    ]);

    private static IEnumerable<string> WayLines(LoadedSite site, ImmutableArray<GoalVerdict> ways)
    {
        foreach (IGrouping<string, GoalVerdict> unit in ways.GroupBy(way => way.Goal.Unit))
        {
            int reached = unit.Count(way => way is Reached);
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{(reached == unit.Count() ? "reached" : ""),-9} {unit.Key}: each step and transition can be reached: {reached} of {unit.Count()}{(reached == 0 ? "" : $", the last after {Longest(site, unit)}")}");
            foreach (GoalVerdict way in unit.Where(way => way is not Reached))
            {
                yield return way is Unreachable ? $"IN VAIN   {way.Goal.Name} {way.Goal.Words}: no run ever brings it about ({way.Goal.Origin.Span})"
                    : $"undecided {way.Goal.Name} {way.Goal.Words}: {((NotFound)way).Words}";
            }
        }
    }

    private static string Longest(LoadedSite site, IEnumerable<GoalVerdict> ways) =>
        WaysPage.Time(site, ways.OfType<Reached>().Max(way => way.Way.Scans));

    private static JsonObject Json(LoadedSite site, GoalVerdict verdict) => new()
    {
        ["name"] = verdict.Goal.Name,
        ["unit"] = verdict.Goal.Unit,
        ["goal"] = verdict.Goal.Words,
        ["verdict"] = verdict switch
        {
            Reached => "reached",
            Unreachable => "in vain",
            _ => "undecided",
        },
        ["evidence"] = verdict switch
        {
            Reached => "trace, replayed",
            Unreachable => "inductive invariant",
            _ => "none",
        },
        ["scans"] = (verdict as Reached)?.Way.Scans,
        ["milliseconds"] = (verdict as Reached)?.Way.Scans * site.System.ScanMilliseconds,
    };
}
