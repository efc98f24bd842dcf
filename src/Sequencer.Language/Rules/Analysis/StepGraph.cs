using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>The procedure without its conditions: steps by their place, and the ways from step to step.</summary>
internal sealed class StepGraph
{
    private StepGraph(ImmutableArray<Step> steps, ImmutableArray<StepWay> ways)
    {
        Steps = steps;
        Ways = ways;
        ImmutableArray<int>[] leaving = new ImmutableArray<int>[steps.Length];
        Array.Fill(leaving, []);
        ILookup<int, int> byStep = Enumerable.Range(0, ways.Length)
            .SelectMany(way => ways[way].From.Select(step => (Step: step, Way: way)))
            .ToLookup(pair => pair.Step, pair => pair.Way);
        foreach (IGrouping<int, int> group in byStep)
        {
            leaving[group.Key] = [.. group];
        }

        Leaving = [.. leaving];
    }

    public ImmutableArray<Step> Steps { get; }

    public ImmutableArray<StepWay> Ways { get; }

    /// <summary>The places where a batch and each section begin.</summary>
    public IEnumerable<int> Starts => Enumerable.Range(0, Steps.Length).DistinctBy(place => Steps[place].State);

    /// <summary>For each step the places of the ways that leave it, alone or with others.</summary>
    public ImmutableArray<ImmutableArray<int>> Leaving { get; }

    public static StepGraph Of(UnitProgram program)
    {
        Dictionary<int, int> places = [];
        for (int place = 0; place < program.Steps.Length; place++)
        {
            places.TryAdd(program.Steps[place].Number, place);
        }

        ImmutableArray<StepWay>.Builder ways = ImmutableArray.CreateBuilder<StepWay>();
        foreach (Transition transition in program.Transitions)
        {
            if (transition.From.Concat(transition.To).All(places.ContainsKey))
            {
                ways.Add(new StepWay(Places(transition.From, places), Places(transition.To, places), transition));
            }
        }

        for (int place = 0; place < program.Steps.Length; place++)
        {
            if (program.Steps[place].Limit.GoTo is { } targets && targets.All(places.ContainsKey))
            {
                ways.Add(new StepWay([place], Places(targets, places), null));
            }
        }

        return new StepGraph(program.Steps, ways.ToImmutable());
    }

    /// <summary>For each step whether a way leads to it, taking a join as ready once each of its steps has been come to.</summary>
    public ImmutableArray<bool> WithWayFromStart()
    {
        bool[] found = new bool[Steps.Length];
        Queue<int> open = new(Starts);
        while (open.TryDequeue(out int step))
        {
            if (found[step])
            {
                continue;
            }

            found[step] = true;
            foreach (StepWay way in Leaving[step].Select(way => Ways[way]).Where(way => way.From.All(from => found[from])))
            {
                foreach (int target in way.To)
                {
                    open.Enqueue(target);
                }
            }
        }

        return [.. found];
    }

    /// <summary>The same steps with some of the ways only.</summary>
    public StepGraph Only(Func<StepWay, bool> way) => new(Steps, [.. Ways.Where(way)]);

    /// <summary>
    /// Sets of steps each of which can be come to from each other, and steps that lead to themselves,
    /// in the order of their first step (Tarjan 1972, without recursion).
    /// </summary>
    public ImmutableArray<ImmutableArray<int>> Circles() => StepCircles.Of(this);

    /// <summary>
    /// The least expected time, in milliseconds, from the start of a step to the start of each that
    /// follows along ways that leave single steps; a step without <c>expect</c> takes none.
    /// </summary>
    public Dictionary<int, long> ExpectedMilliseconds(int from)
    {
        Dictionary<int, long> begins = [];
        PriorityQueue<int, long> open = new([(from, 0)]);
        while (open.TryDequeue(out int step, out long time))
        {
            if (!begins.TryAdd(step, time))
            {
                continue;
            }

            foreach (int way in Leaving[step].Where(way => Ways[way].From.Length == 1))
            {
                foreach (int target in Ways[way].To)
                {
                    open.Enqueue(target, time + (Steps[step].Expected?.Milliseconds ?? 0));
                }
            }
        }

        return begins;
    }

    private static ImmutableArray<int> Places(ImmutableArray<int> numbers, Dictionary<int, int> places) =>
        [.. numbers.Select(number => places[number]).Distinct().Order()];
}
