using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>
/// The longest that a unit stays in a state with steps, from its limits alone (spec/meaning.md, The longest time): steps one
/// after the other add up, branches beside each other run at once, and a circle is gone round as often as its counted ways let it.
/// </summary>
public static class LongestTime
{
    /// <summary>The scan between the end of the last step and the state that follows it.</summary>
    private const int LastScan = 1;

    /// <summary>Until <c>at step N</c> is seen, and until its <c>stays</c> counts as met.</summary>
    private const int ScansUntilSeen = 2;

    /// <summary>One for each state with steps, in the order of the program.</summary>
    public static ImmutableArray<StateTime> Of(UnitProgram program, int scanMilliseconds)
    {
        // By hand a way needs the operator's button too: only limits end a step then.
        bool byLimitsOnly = program.HandAdvance is not null;
        StepGraph graph = StepGraph.Of(program);
        StepGraph uncounted = graph.Only(way => way.Transition?.AtMost is null);
        ImmutableArray<bool> isReached = graph.WithWayFromStart();
        return
        [
            .. program.StatesWithSteps.Select(state =>
            {
                int[] steps = [.. Enumerable.Range(0, graph.Steps.Length).Where(place => isReached[place] && graph.Steps[place].State == state)];
                long?[] longest = [.. graph.Steps.Select((_, place) => Most(graph, place, scanMilliseconds, byLimitsOnly))];
                string? reason = NoEnd(graph, steps, longest) ?? Circle(uncounted, steps);
                Duration wait = state == ProceduralState.Restarting ? program.RestartWait : default;
                long? most = reason is null ? Math.Max(Most(graph, uncounted, steps, longest), wait.Scans(scanMilliseconds)) + LastScan : null;
                return new StateTime(state, most * scanMilliseconds, reason, Expected(graph, steps), steps.Count(place => graph.Steps[place].Expected is null));
            }),
        ];
    }

    /// <summary>
    /// For each step of a state that ends, the most scans from the entry into the state to the entry into the step; nothing
    /// where a circle leads back to a step.
    /// </summary>
    public static ImmutableArray<(int Step, long Scans)> Before(UnitProgram program, ProceduralState state, int scanMilliseconds)
    {
        StepGraph graph = StepGraph.Of(program);
        ImmutableArray<bool> isReached = graph.WithWayFromStart();
        int[] steps = [.. Enumerable.Range(0, graph.Steps.Length).Where(place => isReached[place] && graph.Steps[place].State == state)];
        long?[] longest = [.. graph.Steps.Select((_, place) => Most(graph, place, scanMilliseconds, program.HandAdvance is not null))];
        HashSet<int> all = [.. steps];
        if (steps.Any(place => longest[place] is null) || graph.Circles().Any(circle => circle.All(all.Contains)))
        {
            return [];
        }

        Dictionary<int, long> begins = Begins(steps, Edges(graph, all), steps.ToDictionary(place => place, place => longest[place] ?? 0));
        return [.. steps.Select(place => (graph.Steps[place].Number, begins[place]))];
    }

    /// <summary>The most scans that a step is active in one go; null where nothing ends it for sure.</summary>
    private static long? Most(StepGraph graph, int place, int scanMilliseconds, bool byLimitsOnly)
    {
        Step step = graph.Steps[place];
        bool isEnded = step.Limit.GoTo is not null || step.Limit.Reaction != Reaction.Alarm;
        IEnumerable<long> ends = graph.Leaving[place].Select(way => graph.Ways[way])
            .Where(way => !byLimitsOnly && way is { From.Length: 1, Transition: { AtMost: null, When: StaysFact { AfterLastPulse: false, Condition: StepFact { Unit: null } fact } } } && fact.Step == step.Number)
            .Select(way => ((StaysFact)way.Transition!.When).Time.Scans(scanMilliseconds) + ScansUntilSeen)
            .Concat(isEnded ? [step.Limit.Time.Scans(scanMilliseconds)] : []);
        long waits = step.Claims.Select(claim => claim.Limit.Scans(scanMilliseconds) + LastScan).DefaultIfEmpty(0).Max();
        return ends.Any() ? ends.Min() + waits : null;
    }

    private static string? NoEnd(StepGraph graph, int[] steps, long?[] longest)
    {
        int[] endless = [.. steps.Where(place => longest[place] is null)];
        return endless.Length == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"the limit of step {graph.Steps[endless[0]].Number} only alarms");
    }

    private static string? Circle(StepGraph uncounted, int[] steps)
    {
        HashSet<int> seen = [.. steps];
        if (uncounted.Circles().FirstOrDefault(circle => circle.All(seen.Contains)) is not { IsDefault: false } found)
        {
            return null;
        }

        HashSet<int> circle = [.. found];
        (int from, int to) = Edges(uncounted, circle).First(edge => edge.To <= edge.From);
        return string.Create(CultureInfo.InvariantCulture, $"step {uncounted.Steps[to].Number} may be entered again from step {uncounted.Steps[from].Number}");
    }

    /// <summary>
    /// A run through the steps is a chain of activations along the ways; in a circle its counted ways cut the chain into one more
    /// piece than they may be taken, and each piece is at most the longest way through the circle without them.
    /// </summary>
    private static long Most(StepGraph graph, StepGraph uncounted, int[] steps, long?[] longest)
    {
        HashSet<int> all = [.. steps];
        Dictionary<int, int> group = steps.ToDictionary(place => place, place => place);
        Dictionary<int, long> weight = steps.ToDictionary(place => place, place => longest[place] ?? 0);
        foreach (ImmutableArray<int> circle in graph.Circles().Where(circle => circle.All(all.Contains)))
        {
            HashSet<int> members = [.. circle];
            long turns = graph.Ways.Where(way => way.Transition?.AtMost is not null && way.From.Any(members.Contains) && way.To.Any(members.Contains)).Sum(way => (long)way.Transition!.AtMost!.Most);
            long once = Longest(circle, Edges(uncounted, members), weight);
            foreach (int place in circle)
            {
                group[place] = circle[0];
            }

            weight[circle[0]] = (turns + 1) * once;
        }

        IEnumerable<(int, int)> between = Edges(graph, all).Select(edge => (group[edge.From], group[edge.To])).Where(edge => edge.Item1 != edge.Item2).Distinct();
        return Longest(group.Values.Distinct(), between, weight);
    }

    /// <summary>What is expected along the longest way forward, each step once.</summary>
    private static long Expected(StepGraph graph, int[] steps)
    {
        Dictionary<int, long> weight = steps.ToDictionary(place => place, place => graph.Steps[place].Expected?.Milliseconds ?? 0);
        return Longest(steps, Edges(graph.Only(way => way.Transition is not null), [.. steps]).Where(edge => edge.To > edge.From), weight);
    }

    private static IEnumerable<(int From, int To)> Edges(StepGraph graph, HashSet<int> among) =>
        from way in graph.Ways
        from before in way.From
        from after in way.To
        where among.Contains(before) && among.Contains(after)
        select (before, after);

    /// <summary>The greatest sum of weights along the edges, which make no circle.</summary>
    private static long Longest(IEnumerable<int> nodes, IEnumerable<(int From, int To)> edges, Dictionary<int, long> weight) =>
        Begins(nodes, edges, weight).Select(begin => begin.Value + weight[begin.Key]).DefaultIfEmpty(0).Max();

    /// <summary>For each node the greatest sum of weights along edges that lead to it, without its own.</summary>
    private static Dictionary<int, long> Begins(IEnumerable<int> nodes, IEnumerable<(int From, int To)> edges, Dictionary<int, long> weight)
    {
        ILookup<int, int> after = edges.ToLookup(edge => edge.From, edge => edge.To);
        Dictionary<int, long> begin = nodes.ToDictionary(node => node, _ => 0L);
        Dictionary<int, int> waiting = begin.Keys.ToDictionary(node => node, _ => 0);
        foreach (int to in after.SelectMany(targets => targets))
        {
            waiting[to]++;
        }

        Queue<int> open = new(waiting.Where(node => node.Value == 0).Select(node => node.Key));
        while (open.TryDequeue(out int node))
        {
            foreach (int next in after[node])
            {
                begin[next] = Math.Max(begin[next], begin[node] + weight[node]);
                if (--waiting[next] == 0)
                {
                    open.Enqueue(next);
                }
            }
        }

        return begin;
    }
}
