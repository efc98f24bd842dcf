using System.Numerics;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>
/// Binary decision diagrams in flat arrays, with complement edges (Bryant, "Graph-based algorithms for Boolean function
/// manipulation", IEEE Trans. Computers 1986; Brace, Rudell and Bryant, "Efficient implementation of a BDD package",
/// DAC 1990). An edge is twice the node plus one if negated, so that a <see cref="Literal"/> can carry it; node 0 is true.
/// The edge of a node to where its variable is true is never negated: equal functions are equal edges.
/// Operations recurse no deeper than there are variables.
/// </summary>
internal sealed partial class Diagrams
{
    public const int True = 0;
    public const int False = 1;

    private const int FirstCapacity = 1 << 12;
    private const int MostCacheEntries = 1 << 21;
    private const int StepsBetweenLooks = 1 << 14;
    private const int FreeMark = -1;

    private readonly DiagramBudget _budget;
    private int[] _levels = new int[FirstCapacity];
    private int[] _highs = new int[FirstCapacity];
    private int[] _lows = new int[FirstCapacity];
    private int[] _chains = new int[FirstCapacity];
    private int[] _buckets = new int[FirstCapacity];
    private CacheEntry[] _cache = new CacheEntry[FirstCapacity];
    private int _end = 1;
    private int _free;
    private int _freeCount;
    private int _steps;

    public Diagrams(int variables, DiagramBudget budget)
    {
        Variables = variables;
        _budget = budget;
        _levels[0] = variables;
        ClearCache();
    }

    /// <summary>Variables are the levels from 0, the topmost, up to this.</summary>
    public int Variables { get; }

    /// <summary>Nodes in use or not yet collected.</summary>
    public int Count => _end - _freeCount;

    public int Variable(int level) => Make(level, True, False);

    /// <summary>The conjunction of variables.</summary>
    public int Cube(IEnumerable<int> levels) => levels.OrderDescending().Aggregate(True, (cube, level) => Make(level, cube, False));

    public int LevelOf(int edge) => _levels[edge >> 1];

    /// <summary>What the function is where its topmost variable is true.</summary>
    public int High(int edge) => _highs[edge >> 1] ^ (edge & 1);

    public int Low(int edge) => _lows[edge >> 1] ^ (edge & 1);

    /// <summary>
    /// Frees every node that is not below a root. Edges that are no roots, nor below one, are void afterwards.
    /// </summary>
    public void Collect(IEnumerable<int> roots)
    {
        bool[] used = new bool[_end];
        used[0] = true;
        Stack<int> open = new(roots.Select(root => root >> 1));
        while (open.TryPop(out int node))
        {
            if (!used[node])
            {
                used[node] = true;
                open.Push(_highs[node] >> 1);
                open.Push(_lows[node] >> 1);
            }
        }

        Array.Clear(_buckets);
        _free = 0;
        _freeCount = 0;
        for (int node = _end - 1; node > 0; node--)
        {
            if (used[node])
            {
                Enter(node);
            }
            else
            {
                _levels[node] = FreeMark;
                _chains[node] = _free;
                _free = node;
                _freeCount++;
            }
        }

        ClearCache();
    }

    /// <summary>How many nodes the functions have together.</summary>
    public int Size(IEnumerable<int> roots) => NodesBelow(roots).Count;

    /// <summary>The levels of the variables that a function depends on.</summary>
    public SortedSet<int> Support(int root) => [.. NodesBelow([root]).Select(node => _levels[node])];

    /// <summary>The nodes of the functions, lower ones first; the constant is left out. As edges that are not negated.</summary>
    public IEnumerable<int> InOrder(IEnumerable<int> roots) => NodesBelow(roots).OrderByDescending(node => _levels[node]).Select(node => node << 1);

    /// <summary>How many assignments of the given variables, all that the function depends on among them, make it true.</summary>
    public BigInteger CountOver(int root, IEnumerable<int> levels)
    {
        int[] sorted = [.. levels.Order()];
        int[] ranks = new int[Variables + 1];
        for (int level = Variables, rank = sorted.Length; level >= 0; level--)
        {
            ranks[level] = rank -= level < Variables && Array.BinarySearch(sorted, level) >= 0 ? 1 : 0;
        }

        Dictionary<int, BigInteger> counts = new() { [0] = BigInteger.One };
        foreach (int edge in InOrder([root]))
        {
            counts[edge >> 1] = Below(High(edge), ranks[LevelOf(edge)] + 1) + Below(Low(edge), ranks[LevelOf(edge)] + 1);
        }

        return Below(root, 0);

        BigInteger Below(int edge, int rank)
        {
            int own = ranks[LevelOf(edge)];
            BigInteger count = counts[edge >> 1];
            return ((edge & 1) == 0 ? count : (BigInteger.One << (sorted.Length - own)) - count) << (own - rank);
        }
    }

    private HashSet<int> NodesBelow(IEnumerable<int> roots)
    {
        HashSet<int> seen = [];
        Stack<int> open = new(roots.Select(root => root >> 1));
        while (open.TryPop(out int node))
        {
            if (node != 0 && seen.Add(node))
            {
                open.Push(_highs[node] >> 1);
                open.Push(_lows[node] >> 1);
            }
        }

        return seen;
    }

    private int Make(int level, int high, int low)
    {
        if (high == low)
        {
            return high;
        }

        int negated = high & 1;
        high ^= negated;
        low ^= negated;
        for (int node = _buckets[Bucket(level, high, low)]; node != 0; node = _chains[node])
        {
            if (_highs[node] == high && _lows[node] == low && _levels[node] == level)
            {
                return (node << 1) | negated;
            }
        }

        int made = _free;
        if (made != 0)
        {
            _free = _chains[made];
            _freeCount--;
        }
        else
        {
            if (_end == _levels.Length)
            {
                Grow();
            }

            made = _end++;
        }

        _levels[made] = level;
        _highs[made] = high;
        _lows[made] = low;
        Enter(made);
        return (made << 1) | negated;
    }

    private void Enter(int node)
    {
        int bucket = Bucket(_levels[node], _highs[node], _lows[node]);
        _chains[node] = _buckets[bucket];
        _buckets[bucket] = node;
    }

    private int Bucket(int level, int high, int low) =>
        (int)(Mix((uint)level, (uint)high, (uint)low) & (uint)(_buckets.Length - 1));

    private static uint Mix(uint first, uint second, uint third)
    {
        uint hash = (first * 0x9E3779B1u) ^ (second * 0x85EBCA77u) ^ (third * 0xC2B2AE3Du);
        hash ^= hash >> 15;
        hash *= 0x2C1B3C6Du;
        return hash ^ (hash >> 13);
    }

    private void Grow()
    {
        if (_end >= _budget.Nodes)
        {
            throw new DiagramLimitException($"the diagrams took more than {_budget.Nodes} nodes");
        }

        int size = 2 * _levels.Length;
        Array.Resize(ref _levels, size);
        Array.Resize(ref _highs, size);
        Array.Resize(ref _lows, size);
        Array.Resize(ref _chains, size);
        _buckets = new int[size];
        for (int node = 1; node < _end; node++)
        {
            Enter(node);
        }

        if (size <= MostCacheEntries)
        {
            _cache = new CacheEntry[size];
            ClearCache();
        }
    }

    private void ClearCache() => Array.Fill(_cache, new CacheEntry { Operation = Operation.None });

    private void CountStep()
    {
        if (++_steps == StepsBetweenLooks)
        {
            _steps = 0;
            _budget.CountSteps(StepsBetweenLooks);
        }
    }

    private enum Operation
    {
        None,
        And,
        ExclusiveOr,
        Choice,
        AndExists,
        Rename,
        Restrict,
    }

    private struct CacheEntry
    {
        public Operation Operation;
        public int First;
        public int Second;
        public int Third;
        public int Result;
    }
}
