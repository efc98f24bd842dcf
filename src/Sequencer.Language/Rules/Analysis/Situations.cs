namespace Sequencer.Language.Rules.Analysis;

/// <summary>
/// Which steps the procedure and each section by itself can have active, and which together, if every condition could be true or
/// false at any time. Ways are cleared one after another: clearing several at once (IEC 60848) leads
/// nowhere else, since ways that share a step exclude each other and the rest do not touch. So what is
/// not found here never happens; what is found happens only if the conditions allow it.
///
/// Up to <see cref="MostSituations"/> situations are looked at one by one (exact for the graph). Beyond,
/// <see cref="StepPairs"/> follows pairs of steps: still sound for "never active", "never together" and
/// "never enabled"; then nothing is said of waiting for ever or of a step entered twice.
/// </summary>
internal sealed class Situations
{
    public const int MostSituations = 5_000;

    /// <summary>Steps copied while following ways; bounds the time for wide procedures.</summary>
    public const long MostCopies = 500_000;

    private readonly StepGraph _graph;
    private readonly HashSet<Situation> _seen = [];
    private readonly Queue<Situation> _open = [];
    private long _copies;

    private Situations(StepGraph graph)
    {
        _graph = graph;
        Pairs = new StepPairs(graph);
    }

    /// <summary>Situations from which no way leads on, though steps are active.</summary>
    public List<Situation> DeadEnds { get; } = [];

    /// <summary>Ways that can lead into a step that is active already and stays so, with that step.</summary>
    public SortedDictionary<int, int> Reentered { get; } = [];

    /// <summary>Which steps and ways are possible, and which steps together.</summary>
    public StepPairs Pairs { get; private init; }

    public static Situations Explore(StepGraph graph)
    {
        Situations found = new(graph);
        if (found.TryAll())
        {
            return found;
        }

        StepPairs pairs = new(graph);
        pairs.Close();
        return new Situations(graph) { Pairs = pairs };
    }

    private bool TryAll()
    {
        foreach (int start in _graph.Starts)
        {
            See(new Situation([start]));
        }

        while (_open.TryDequeue(out Situation situation))
        {
            Pairs.Note(situation);
            bool moves = false;
            foreach (int way in situation.Active.SelectMany(step => _graph.Leaving[step]).Distinct())
            {
                if (situation.Enables(_graph.Ways[way]))
                {
                    moves = true;
                    Clear(way, situation);
                }
            }

            if (!moves && !situation.Active.IsEmpty)
            {
                DeadEnds.Add(situation);
            }

            if (_seen.Count > MostSituations || _copies > MostCopies)
            {
                return false;
            }
        }

        return true;
    }

    private void Clear(int index, Situation situation)
    {
        StepWay way = _graph.Ways[index];
        Pairs.NoteEnabled(index);
        foreach (int target in way.To)
        {
            if (situation.Contains(target) && !way.From.Contains(target))
            {
                Reentered.TryAdd(index, target);
            }
        }

        _copies += situation.Active.Length;
        See(situation.After(way));
    }

    private void See(Situation situation)
    {
        if (_seen.Add(situation))
        {
            _open.Enqueue(situation);
        }
    }
}
