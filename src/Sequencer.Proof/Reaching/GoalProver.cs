using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Reaching;

/// <summary>Decides which goals of a system some run reaches: real runs first, and for what they miss a proof or a run of its own.</summary>
public static class GoalProver
{
    /// <summary>A single goal that the search misses is worth so much, and no more.</summary>
    private const long ConflictsAlone = 20_000;
    private const long PropagationsAlone = 20_000_000;
    private const int RefinementsAlone = 40;

    /// <summary>One verdict for each goal asked for, in the system's order. Cancelling leaves what is open <see cref="NotFound"/>; nothing is thrown for it.</summary>
    public static ImmutableArray<GoalVerdict> DecideAll(
        TransitionSystem system, ImmutableArray<Goal> asked, ProofOptions options, IProgress<ProofProgress>? progress, CancellationToken cancellation)
    {
        if (asked.IsEmpty)
        {
            return [];
        }

        GoalVerdict?[] verdicts = new GoalVerdict?[system.Goals.Length];
        Budget budget = new(options.Conflicts, cancellation);
        GoalSystem goals = GoalSystem.Of(system, system.Goals);
        GoalSearch search = new(goals, budget);
        try
        {
            search.Run(reached => progress?.Report(new ProofProgress("steps and transitions", "search", reached)));
        }
        catch (Exception stopped) when (stopped is OperationCanceledException or BudgetSpentException)
        {
            // What was found before stays; the rest is told to be open below.
        }

        GoalReplay replay = new(system);
        for (int goal = 0; goal < verdicts.Length; goal++)
        {
            Trace? way = search.WayTo(goal) is { } found ? replay.UpTo(goal, goals.Slice.Widen(new Trace([.. found]))) : null;
            verdicts[goal] = way is null ? null : new Reached(system.Goals[goal], way);
        }

        ProofOptions alone = options with { Conflicts = ConflictsAlone, Propagations = PropagationsAlone, Refinements = RefinementsAlone };
        HashSet<string> reached = [.. verdicts.OfType<Reached>().Select(verdict => verdict.Goal.Name)];
        return
        [
            .. Enumerable.Range(0, verdicts.Length).Where(place => asked.Contains(system.Goals[place])).Select(place => verdicts[place]
                ?? (system.Goals[place].After is { IsEmpty: false } after && !after.Any(reached.Contains)
                    ? new NotFound(system.Goals[place], $"no way was found to what comes before: {string.Join(", ", after)}")
                    : Alone(system, system.Goals[place], alone, progress, cancellation))),
        ];
    }

    private static GoalVerdict Alone(TransitionSystem system, Goal goal, ProofOptions options, IProgress<ProofProgress>? progress, CancellationToken cancellation)
    {
        Requirement never = GoalSystem.Never(goal);
        return Prover.Decide(system, never, options, progress, cancellation) switch
        {
            Holds holds => new Unreachable(goal, never, holds),
            Fails fails => new Reached(goal, fails.Trace),
            Undecided undecided => new NotFound(goal, undecided.Words),
            _ => throw new System.Diagnostics.UnreachableException("a verdict of another kind"),
        };
    }
}
