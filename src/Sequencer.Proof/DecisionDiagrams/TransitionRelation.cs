namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>
/// One scan as a conjunction of parts, each saying what some bits become. Images are taken part by part, and a variable is
/// forgotten with the last part that speaks of it (Burch, Clarke, Long 1991; the order after Ranjan, Aziz, Brayton, Plessier and
/// Pixley, "Efficient BDD algorithms for FSM synthesis and verification", IWLS 1995).
/// </summary>
internal sealed class TransitionRelation
{
    private const int LargestPart = 2_000;
    private const int FewestNodesToCollect = 100_000;

    private readonly DiagramSystem _system;
    private readonly Diagrams _diagrams;
    private readonly List<(int Relation, int Forgotten)> _parts = [];
    private readonly int _forgottenFirst;
    private int _collectAt = FewestNodesToCollect;

    public TransitionRelation(DiagramSystem system)
    {
        _system = system;
        _diagrams = system.Diagrams;
        HashSet<int> forgettable = [.. system.Ordering.Inputs, .. system.Ordering.States];
        List<(int Relation, SortedSet<int> Support)> open = [.. Cluster().Select(part => (part, _diagrams.Support(part)))];
        _forgottenFirst = _diagrams.Cube(forgettable.Where(level => !open.Exists(part => part.Support.Contains(level))));
        while (open.Count > 0)
        {
            (int Relation, SortedSet<int> Support) best = open.MaxBy(part => Gain(part, open, forgettable));
            open.Remove(best);
            int[] forgotten = [.. best.Support.Where(level => forgettable.Contains(level) && !open.Exists(other => other.Support.Contains(level)))];
            _parts.Add((best.Relation, _diagrams.Cube(forgotten)));
        }
    }

    /// <summary>Every edge that must live as long as the relation.</summary>
    public IEnumerable<int> Roots => [_forgottenFirst, .. _parts.SelectMany(part => (int[])[part.Relation, part.Forgotten])];

    /// <summary>The states that one scan leads to from a set of states; <paramref name="kept"/> must not be collected meanwhile.</summary>
    public int Image(int set, IEnumerable<int> kept)
    {
        int image = _diagrams.AndExists(set, Diagrams.True, _forgottenFirst);
        foreach ((int relation, int forgotten) in _parts)
        {
            image = _diagrams.AndExists(image, relation, forgotten);
            CollectIfMany(kept, image);
        }

        return _diagrams.RaiseByOne(image);
    }

    private void CollectIfMany(IEnumerable<int> kept, int image)
    {
        if (_diagrams.Count >= _collectAt)
        {
            _diagrams.Collect([.. _system.Roots, .. Roots, .. kept, image]);
            _collectAt = Math.Max(FewestNodesToCollect, 2 * _diagrams.Count);
        }
    }

    /// <summary>What each bit becomes, neighbours together for as long as they stay small.</summary>
    private List<int> Cluster()
    {
        List<int> parts = [_system.Kept];
        foreach ((int level, int after) in _system.Functions.OrderBy(function => function.Level))
        {
            int becomes = _diagrams.ExclusiveOr(_diagrams.Variable(level + 1), after) ^ 1;
            int joined = _diagrams.And(parts[^1], becomes);
            if (_diagrams.Size([joined]) <= LargestPart)
            {
                parts[^1] = joined;
            }
            else
            {
                parts.Add(becomes);
            }
        }

        return parts;
    }

    /// <summary>Forgetting many variables soon is good; bringing in many bits after the scan is not.</summary>
    private static double Gain((int Relation, SortedSet<int> Support) part, List<(int Relation, SortedSet<int> Support)> open, HashSet<int> forgettable)
    {
        int old = part.Support.Count(forgettable.Contains);
        int gone = part.Support.Count(level => forgettable.Contains(level) && open.Count(other => other.Support.Contains(level)) == 1);
        return ((2.0 * gone) - (part.Support.Count - old)) / (1 + part.Support.Count);
    }
}
