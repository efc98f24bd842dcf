using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Insight;
using Sequencer.Proof.Reaching;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Proposing;

/// <summary>What is so of the site as it is, and must stay so with an addition.</summary>
internal sealed class Baseline
{
    private readonly ImmutableArray<Verdict> _verdicts;
    private readonly ImmutableArray<Reached> _ways;
    private readonly ProofSettings _settings;
    private readonly IProgress<StageProgress> _progress;
    private readonly CancellationToken _cancellation;
    private readonly Lazy<ImmutableArray<Scenario>> _passing;

    public Baseline(
        LoadedSite site, ImmutableArray<Verdict> verdicts, ImmutableArray<GoalVerdict> ways, ProofSettings settings, IProgress<StageProgress> progress, CancellationToken cancellation)
    {
        _verdicts = verdicts;
        _ways = [.. ways.OfType<Reached>()];
        _settings = settings;
        _progress = progress;
        _cancellation = cancellation;
        _passing = new Lazy<ImmutableArray<Scenario>>(() =>
        {
            ScenarioPlayer player = Player(site);
            return [.. SiteCommands.InOrder(site).Where(scenario => Passes(site, player, scenario))];
        });
    }

    /// <summary>Whether all of it stays so; else why not, in words.</summary>
    /// <param name="mended">The site with an addition.</param>
    /// <param name="verdict">Of the requirement that was broken, in the mended site.</param>
    public (Shown? Shown, string? Objection) Show(LoadedSite mended, Holds verdict)
    {
        ScenarioPlayer player = Player(mended);
        foreach (Scenario scenario in _passing.Value)
        {
            if (!Passes(mended, player, scenario))
            {
                return (null, $"the scenario \"{scenario.Name}\" would no longer come out as expected");
            }
        }

        ImmutableArray<Reached> reached = GoalProver.Replay(mended.ProofSystem, _ways);
        if (reached.Length < _ways.Length)
        {
            HashSet<string> again = [.. reached.Select(way => way.Goal.Name)];
            ImmutableArray<Goal> open = [.. mended.ProofSystem.Goals.Where(goal => !again.Contains(goal.Name) && _ways.Any(way => way.Goal.Name == goal.Name))];
            ImmutableArray<GoalVerdict> found = GoalProver.DecideAll(mended.ProofSystem, open, ProofOptions.Default, _settings.Memory, new ProofWords("mends", _progress), _cancellation);
            if (found.FirstOrDefault(way => way is not Reached) is { } lost)
            {
                return (null, $"{lost.Goal.Unit}, {lost.Goal.Words}: {(lost is Unreachable ? "could never come about" : "no way was found")} any more");
            }
        }

        return Requirements(mended, verdict);
    }

    private (Shown? Shown, string? Objection) Requirements(LoadedSite mended, Holds verdict)
    {
        int kept = 0;
        List<string> also = [];
        foreach ((TransitionSystem system, Requirement requirement) in Asked(mended))
        {
            Verdict? before = _verdicts.FirstOrDefault(one => one.Requirement == requirement.Name);
            if (before is null || requirement.Name == verdict.Requirement)
            {
                continue;
            }

            bool holds = before is Holds held && Leaning.Of(system, requirement, held.Invariant, ProofOptions.Default, _cancellation) is not null;
            Verdict now = holds ? before : Prover.Decide(system, requirement, before is Holds ? ProofOptions.Default : MendSearch.Budget, _settings.Memory, null, _cancellation);
            if (before is Holds && now is not Holds)
            {
                return (null, $"{requirement.Name} \"{requirement.Title}\", which holds, {(now is Fails ? "would fail" : "could not be proved any more")}");
            }

            kept += before is Holds ? 1 : 0;
            if (before is Fails && now is Holds)
            {
                also.Add(requirement.Name);
            }
        }

        return (new Shown(verdict, kept, _ways.Length, _passing.Value.Length, [.. also]), null);
    }

    private static IEnumerable<(TransitionSystem System, Requirement Requirement)> Asked(LoadedSite site) =>
    [
        .. site.System.Requirements.Select(requirement => (site.System, requirement)),
        .. site.ProofSystem.Requirements.Where(requirement => requirement.Obligation is not null).Select(requirement => (site.ProofSystem, requirement)),
    ];

    private static ScenarioPlayer Player(LoadedSite site) => new(site.System, site.Metadata, site.Plant);

    private bool Passes(LoadedSite site, ScenarioPlayer player, Scenario scenario)
    {
        _progress.Report(new StageProgress("mends", $"scenario {scenario.Name}"));
        return SimulationStage.IsAsExpected(site, player.Play(scenario, new DiagnosticBag(), null, _cancellation));
    }
}
