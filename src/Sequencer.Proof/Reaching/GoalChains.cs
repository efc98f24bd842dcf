using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Reaching;

/// <summary>The order of the goals: which come before which, and by which of those known to be reached a goal may be come to.</summary>
internal sealed class GoalChains
{
    private readonly ImmutableArray<int>[] _before;
    private readonly ImmutableArray<Expression> _meanwhile;
    private readonly List<Place>[] _ways;

    /// <param name="goals">The goals in order.</param>
    /// <param name="meanwhile">For each what is so just before it.</param>
    /// <param name="ways">For each the places at which it was reached; they grow as the search goes on.</param>
    public GoalChains(ImmutableArray<Goal> goals, ImmutableArray<Expression> meanwhile, List<Place>[] ways)
    {
        Dictionary<string, int> numbers = Enumerable.Range(0, goals.Length).ToDictionary(goal => goals[goal].Name, goal => goal, StringComparer.Ordinal);
        _before = [.. goals.Select(goal => goal.After.Where(numbers.ContainsKey).Select(name => numbers[name]).ToImmutableArray())];
        _meanwhile = meanwhile;
        _ways = ways;
    }

    public ImmutableArray<int> Before(int goal) => _before[goal];

    /// <summary>Whether the goal comes first of all, or after one that is reached.</summary>
    public bool IsNext(int goal) => _before[goal].IsEmpty || _before[goal].Any(before => _ways[before].Count > 0);

    /// <summary>All goals that may come before this one, the nearest first.</summary>
    public IEnumerable<int> FurtherBack(int goal)
    {
        List<int> back = [goal];
        for (int at = 0; at < back.Count; at++)
        {
            back.AddRange(_before[back[at]].Except(back));
        }

        return back.Skip(1);
    }

    /// <summary>Goals one after the other up to this one: the fewest from where the place stands already, else the way that was the soonest.</summary>
    public int[] To(int goal, Place from)
    {
        Dictionary<int, int> next = new() { [goal] = goal };
        Queue<int> open = new([goal]);
        while (open.TryDequeue(out int at))
        {
            if (!_meanwhile[at].IsTrue && PlaceMoves.IsSo(from, _meanwhile[at]))
            {
                List<int> chain = [at];
                while (chain[^1] != goal)
                {
                    chain.Add(next[chain[^1]]);
                }

                return [.. chain];
            }

            foreach (int before in _before[at].Where(before => _ways[before].Count > 0 && next.TryAdd(before, at)))
            {
                open.Enqueue(before);
            }
        }

        Stack<int> soonest = new([goal]);
        while (Earlier(soonest.Peek()) is { } before && !soonest.Contains(before))
        {
            soonest.Push(before);
        }

        return [.. soonest];
    }

    /// <summary>Of the goals before it the one reached soonest.</summary>
    private int? Earlier(int goal) =>
        _before[goal].Where(before => _ways[before].Count > 0).OrderBy(before => _ways[before][0].Scans).Select(before => (int?)before).FirstOrDefault();
}
