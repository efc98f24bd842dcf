namespace Sequencer.Language.Rules.Analysis;

/// <summary>Steps that can be active, pairs of steps that can be active together, ways that can be enabled.</summary>
internal sealed class StepPairs
{
    /// <summary>Beyond this many pairs nothing is decided any more: every step and way counts as possible, no pair does.</summary>
    public const int MostPairs = 1_000_000;

    private readonly StepGraph _graph;
    private readonly HashSet<int>[] _partners;
    private readonly bool[] _reached;
    private readonly bool[] _enabled;
    private readonly Queue<int> _toLookAt = [];
    private long _pairs;

    public StepPairs(StepGraph graph)
    {
        _graph = graph;
        _reached = new bool[graph.Steps.Length];
        _enabled = new bool[graph.Ways.Length];
        _partners = new HashSet<int>[graph.Steps.Length];
        for (int step = 0; step < _partners.Length; step++)
        {
            _partners[step] = [];
        }
    }

    public bool IsReached(int step) => _reached[step];

    public bool IsEnabled(int way) => _enabled[way];

    public bool CanBeTogether(int first, int second) => first == second ? _reached[first] : _partners[first].Contains(second);

    public void NoteEnabled(int way) => _enabled[way] = true;

    public void Note(Situation situation)
    {
        for (int first = 0; first < situation.Active.Length; first++)
        {
            Reach(situation.Active[first]);
            for (int second = first + 1; second < situation.Active.Length; second++)
            {
                Join(situation.Active[first], situation.Active[second]);
            }
        }
    }

    /// <summary>
    /// Finds the least set of pairs that is closed under the ways: a way counts as enabled once its steps
    /// are reached and pairwise together; a step together with all of them stays together with its targets.
    /// </summary>
    public void Close()
    {
        foreach (int start in _graph.Starts)
        {
            Reach(start);
        }

        while (_toLookAt.TryDequeue(out int step))
        {
            foreach (int way in _graph.Leaving[step])
            {
                Follow(way);
            }

            if (_pairs > MostPairs)
            {
                GiveUp();
                return;
            }
        }
    }

    private void Follow(int index)
    {
        StepWay way = _graph.Ways[index];
        if (!way.From.All(first => way.From.All(second => CanBeTogether(first, second))))
        {
            return;
        }

        _enabled[index] = true;
        int[] beside = [.. _partners[way.From[0]].Where(step => !way.From.Contains(step) && way.From.All(from => CanBeTogether(from, step)))];
        foreach (int target in way.To)
        {
            Reach(target);
            foreach (int other in beside.Concat(way.To))
            {
                Join(target, other);
            }
        }
    }

    private void Reach(int step)
    {
        if (!_reached[step])
        {
            _reached[step] = true;
            _toLookAt.Enqueue(step);
        }
    }

    private void Join(int first, int second)
    {
        if (first != second && _partners[first].Add(second))
        {
            _partners[second].Add(first);
            _pairs++;
            _toLookAt.Enqueue(first);
            _toLookAt.Enqueue(second);
        }
    }

    private void GiveUp()
    {
        Array.Fill(_reached, true);
        Array.Fill(_enabled, true);
        foreach (HashSet<int> partners in _partners)
        {
            partners.Clear();
        }
    }
}
