using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// Judges ways to goals scan by scan on the compiled stepper, which no search engine shares. Where a way is hours long with few changes of
/// its inputs, scans that are alike are judged as one stride. What ways have in common at their beginning is played once.
/// </summary>
internal sealed class GoalReplay
{
    private const long ScansForStrides = 200_000;
    private const long ScansForEachChange = 1_000;

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
            Parallel.For(0, now.Count, place => found[place] = Play(ways[now[place]]!, fresh[place], _steppers[place]));
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
    private Trace?[] Play(Trace way, PlayedWay passed, CompiledStepper stepper)
    {
        Trace?[] judged = new Trace?[_goals];
        if (!way.Segments.All(segment => _system.Inputs.Zip(segment.Inputs, (input, value) => input.Range.Contains(value)).All(inside => inside)))
        {
            return judged;
        }

        long[] first = way.Scans >= ScansForStrides && way.Scans >= ScansForEachChange * way.Segments.Length ? InStrides(way) : ScanByScan(way, passed, stepper);
        for (int goal = 0; goal < _goals; goal++)
        {
            judged[goal] = first[goal] > 0 ? way.First(first[goal]) : null;
        }

        return judged;
    }

    /// <summary>For each goal after how many scans it is reached first, 0 if it is not.</summary>
    private long[] ScanByScan(Trace way, PlayedWay passed, CompiledStepper stepper)
    {
        long[] first = new long[_goals];
        stepper.Initialise();
        PlayedWay.Checkpoint? from = _played.Select(played => played.LastOn(way)).OfType<PlayedWay.Checkpoint>().MaxBy(checkpoint => checkpoint.Scans);
        if (from is not null)
        {
            stepper.SetStates(from.States);
        }

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

        return first;
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

    /// <summary>The same with <see cref="SearchRun"/>: in a stride no assumption and no goal becomes otherwise.</summary>
    private long[] InStrides(Trace way)
    {
        long[] first = new long[_goals];
        ExpressionBuilder build = new();
        IReadOnlyList<Expression> own = build.Substitute(
            [.. _system.Goals.Select(goal => goal.Reached), .. _system.Assumptions.Select(assumption => assumption.Holds)], new Dictionary<Variable, Expression>());
        SearchRun run = new(_system, build.And(own.Skip(_goals)), build.True, own.Take(_goals));
        long[] states = [.. SearchRun.InitialStates(_system)];
        long scans = 0;
        foreach (TraceSegment segment in way.Segments)
        {
            for (int left = segment.Scans; left > 0;)
            {
                int stride = run.Stride(segment.Inputs.AsSpan(), states, left);
                if (!run.KeptAssumptions)
                {
                    return first;
                }

                for (int goal = 0; goal < _goals; goal++)
                {
                    first[goal] = first[goal] == 0 && run.IsSo(own[goal]) ? scans + 1 : first[goal];
                }

                left -= stride;
                scans += stride;
            }
        }

        return first;
    }
}
