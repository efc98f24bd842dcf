using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Remembering;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Reaching;

/// <summary>Decides which goals of a system some run reaches: real runs first, and for what they miss a proof or a run of its own.</summary>
public static class GoalProver
{
    /// <summary>A single goal that the search misses is worth so much, and no more.</summary>
    private const long ConflictsAlone = 20_000;
    private const long PropagationsAlone = 20_000_000;
    private const int RefinementsAlone = 40;

    /// <summary>
    /// One verdict for each goal asked for, in the system's order. Ways found before are played first: only what they miss is looked for.
    /// Cancelling leaves what is open <see cref="NotFound"/>; nothing is thrown for it.
    /// </summary>
    public static ImmutableArray<GoalVerdict> DecideAll(
        TransitionSystem system, ImmutableArray<Goal> asked, ProofOptions options, IProofMemory? memory, IProgress<ProofProgress>? progress, CancellationToken cancellation)
    {
        if (asked.IsEmpty)
        {
            return [];
        }

        GoalReplay replay = new(system);
        GoalVerdict?[] verdicts = new GoalVerdict?[system.Goals.Length];
        if (memory?.Find(WayText.Key(system)) is { } before)
        {
            Take(replay.Judge(WayText.Read(system, before)));
        }

        if (Open().Any(goal => asked.Contains(system.Goals[goal])))
        {
            Search();
            memory?.Keep(WayText.Key(system), WayText.Write(system, replay.Played.Order().Select(goal => verdicts[goal]).OfType<Reached>().Select(reached => (reached.Goal, reached.Way))));
        }

        return
        [
            .. Enumerable.Range(0, verdicts.Length).Where(goal => asked.Contains(system.Goals[goal])).Select(goal => verdicts[goal]
                ?? new NotFound(system.Goals[goal], $"no way was found to what comes before: {string.Join(", ", system.Goals[goal].After)}")),
        ];

        int[] Open() => [.. Enumerable.Range(0, verdicts.Length).Where(goal => verdicts[goal] is null)];

        void Take(Trace?[] judged) => Array.ForEach(Open(), goal => verdicts[goal] = judged[goal] is { } way ? new Reached(system.Goals[goal], way) : null);

        void Search()
        {
            ProofOptions alone = options with { Conflicts = ConflictsAlone, Propagations = PropagationsAlone, Refinements = RefinementsAlone };
            GoalSystem goals = GoalSystem.Of(system, system.Goals);
            GoalSearch search = new(goals, new Budget(options.Conflicts, cancellation));
            Reached[] more = [.. verdicts.OfType<Reached>()];
            do
            {
                Array.ForEach(more, reached => search.Take(goals.Slice.Narrow(reached.Way)));
                Run(search, progress);
                Trace?[] found = new Trace?[verdicts.Length];
                Array.ForEach(Open(), goal => found[goal] = search.WayTo(goal) is { } way ? goals.Slice.Widen(new Trace([.. way])) : null);
                Take(replay.Judge(found));
                int[] next = [.. Open().Where(goal => asked.Contains(system.Goals[goal]) && search.IsNext(goal))];
                Array.ForEach(next, goal => verdicts[goal] = Alone(system, system.Goals[goal], alone, memory, progress, cancellation));

                // A run of the prover's own may lead on to goals behind it.
                more = [.. next.Select(goal => verdicts[goal]).OfType<Reached>()];
            }
            while (more.Length > 0);
        }
    }

    private static void Run(GoalSearch search, IProgress<ProofProgress>? progress)
    {
        try
        {
            search.Run(reached => progress?.Report(new ProofProgress("steps and transitions", "search", reached)));
        }
        catch (Exception stopped) when (stopped is OperationCanceledException or BudgetSpentException)
        {
            // What was found before stays; the rest is told to be open.
        }
    }

    /// <summary>The goals that known ways of another system, with the same inputs, reach in this one too; each replayed as a verdict of this system.</summary>
    public static ImmutableArray<Reached> Replay(TransitionSystem system, IEnumerable<Reached> known)
    {
        Dictionary<string, Reached> ways = known.Where(way => way.Way.Segments.All(segment => segment.Inputs.Length == system.Inputs.Length))
            .ToDictionary(way => way.Goal.Name, StringComparer.Ordinal);
        Trace?[] judged = new GoalReplay(system).Judge([.. system.Goals.Select(goal => ways.GetValueOrDefault(goal.Name)?.Way)]);
        return [.. system.Goals.Zip(judged).Where(pair => pair.Second is not null).Select(pair => new Reached(pair.First, pair.Second!))];
    }

    private static GoalVerdict Alone(TransitionSystem system, Goal goal, ProofOptions options, IProofMemory? memory, IProgress<ProofProgress>? progress, CancellationToken cancellation)
    {
        Requirement never = GoalSystem.Never(goal);
        return Prover.Decide(system, never, options, memory, progress, cancellation) switch
        {
            Holds holds => new Unreachable(goal, never, holds),
            Fails fails => new Reached(goal, fails.Trace),
            Undecided undecided => new NotFound(goal, undecided.Words),
            _ => throw new System.Diagnostics.UnreachableException("a verdict of another kind"),
        };
    }
}
