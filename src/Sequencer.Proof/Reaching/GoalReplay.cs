using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// Judges ways to goals scan by scan on the compiled stepper, which no search engine shares. Where a way is millions of scans long,
/// nearly all of them alike, those that are alike are judged as one stride. What ways have in common at their beginning is played once.
/// </summary>
internal sealed class GoalReplay
{
    private const long MostScans = 1_000_000;

    /// <summary>Played at once; no matter of processors, since which ways are played must not depend on the machine.</summary>
    private const int AtOnce = 2;

    private readonly TransitionSystem _system;
    private readonly ImmutableArray<CompiledStepper> _steppers;
    private readonly int _goals;
    private readonly List<PlayedWay> _played = [];

    public GoalReplay(TransitionSystem system)
    {
        _system = system;
        _goals = system.Goals.Length;
        ImmutableArray<Expression> observed = [.. system.Goals.Select(goal => goal.Reached), .. system.Assumptions.Select(assumption => assumption.Holds)];
        CompiledSystem compiled = CompiledSystem.Compile(system, observed);
        _steppers = [.. Enumerable.Range(0, AtOnce).Select(_ => new CompiledStepper(compiled))];
    }

    /// <summary>The goals whose own way was played; the ways to all others are beginnings of theirs.</summary>
    public HashSet<int> Played { get; } = [];

    /// <summary>
    /// For each goal the shortest of the ways up to the scan that reaches it; null where none does, or an assumption or a range is
    /// broken before. Most ways go on from others: the longest is played first, and what it reaches on the way is judged with it.
    /// </summary>
    public Trace?[] Judge(Trace?[] ways)
    {
        Trace?[] judged = new Trace?[_goals];
        Queue<int> open = new(Enumerable.Range(0, _goals).Where(goal => ways[goal] is not null).OrderByDescending(goal => ways[goal]!.Scans));
        while (open.Count > 0)
        {
            List<int> now = [];
            while (now.Count < AtOnce && open.TryDequeue(out int goal))
            {
                if (judged[goal] is null || judged[goal]!.Scans > ways[goal]!.Scans)
                {
                    now.Add(goal);
                }
            }

            Trace?[][] found = new Trace?[now.Count][];
            PlayedWay[] fresh = [.. now.Select(goal => new PlayedWay(ways[goal]!))];
            Parallel.For(0, now.Count, place => found[place] = Play(now[place], ways[now[place]]!, fresh[place], _steppers[place]));
            Played.UnionWith(now);
            _played.AddRange(fresh);
            foreach (Trace?[] one in found)
            {
                for (int goal = 0; goal < _goals; goal++)
                {
                    judged[goal] = one[goal] is { } way && !(judged[goal]?.Scans <= way.Scans) ? way : judged[goal];
                }
            }
        }

        return judged;
    }

    /// <summary>For each goal the beginning of the way that reaches it, or null.</summary>
    private Trace?[] Play(int wanted, Trace way, PlayedWay passed, CompiledStepper stepper)
    {
        Trace?[] judged = new Trace?[_goals];
        if (!way.Segments.All(segment => _system.Inputs.Zip(segment.Inputs, (input, value) => input.Range.Contains(value)).All(inside => inside)))
        {
            return judged;
        }

        if (way.Scans > MostScans)
        {
            judged[wanted] = InStrides(wanted, way);
            return judged;
        }

        long[] first = new long[_goals];
        stepper.Initialise();
        PlayedWay.Checkpoint? from = _played.Select(played => played.LastOn(way)).OfType<PlayedWay.Checkpoint>().MaxBy(checkpoint => checkpoint.Scans);
        from?.States.CopyTo(stepper.States, 0);
        from?.First.CopyTo(first, 0);
        long scans = from?.Scans ?? 0;
        bool kept = true;
        for (int segment = from?.Segments ?? 0; kept && segment < way.Segments.Length; segment++)
        {
            scans = TracePlayback.GoOn(way.Segments.AsSpan(segment, 1), stepper, scans, (running, scan) => kept = Note(running, scan, first));
            if (kept)
            {
                passed.Pass(segment + 1, scans, stepper.States, first);
            }
        }

        for (int goal = 0; goal < _goals; goal++)
        {
            judged[goal] = first[goal] > 0 ? way.First(first[goal]) : null;
        }

        return judged;
    }

    /// <summary>Notes the goals that the scan reaches; false if it breaks an assumption.</summary>
    private bool Note(Stepper running, long scan, long[] first)
    {
        bool kept = running.Observed.AsSpan(_goals).IndexOf(0L) < 0;
        Span<long> reached = running.Observed.AsSpan(0, _goals);
        for (int goal = kept ? reached.IndexOf(1L) : -1; goal >= 0;)
        {
            first[goal] = first[goal] == 0 ? scan + 1 : first[goal];
            int further = reached[(goal + 1)..].IndexOf(1L);
            goal = further < 0 ? -1 : goal + 1 + further;
        }

        return kept;
    }

    private Trace? InStrides(int goal, Trace way)
    {
        Expression[] assumed = [.. _system.Assumptions.Select(assumption => assumption.Holds)];
        ExpressionBuilder build = new();
        IReadOnlyList<Expression> own = build.Substitute([_system.Goals[goal].Reached, .. assumed], new Dictionary<Variable, Expression>());
        return new SearchRun(_system, build.And(own.Skip(1)), build.Not(own[0]), []).UpToFailure(way.Segments);
    }
}
