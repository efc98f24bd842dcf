using System.Runtime.InteropServices;

namespace Sequencer.Proof.Satisfiability;

/// <summary>
/// An incremental clause-learning solver: two watched literals, first unique implication points,
/// activity-ordered decisions with remembered phases, Luby restarts, forgetting of learnt clauses,
/// and assumptions with a core (after Eén and Sörensson, "An Extensible SAT-solver", SAT 2003).
/// What follows from the assumptions that one query shares with the next, from the first on, is kept between them.
/// Clauses lie in one array: length, learnt block distance (0 for a given clause, -1 for a dead one), literals.
/// </summary>
internal sealed partial class Solver
{
    private const int ClauseHeader = 2;
    private const int NoReason = -1;

    /// <summary>From so many literals on they are looked up and not gone through.</summary>
    private const int LongClause = 32;

    private readonly VariableOrder _order = new();
    private readonly List<int> _levelStarts = [];
    private readonly List<int> _learnt = [];
    private readonly List<int> _given = [];
    private readonly List<Literal> _core = [];
    private readonly List<Literal> _retired = [];
    private readonly List<Literal> _assumed = [];

    private int[] _clauses = new int[1024];
    private int _clausesEnd;
    private sbyte[] _values = new sbyte[64];
    private WatchList[] _watches = new WatchList[64];
    private int[] _levels = new int[32];
    private int[] _reasons = new int[32];
    private bool[] _phases = new bool[32];
    private bool[] _seen = new bool[32];
    private bool[] _model = [];
    private Literal[] _trail = new Literal[32];
    private int _trailEnd;
    private int _propagated;
    private bool _contradictory;

    public Solver(Budget budget)
    {
        Budget = budget;
    }

    /// <summary>Pays for what is done from now on.</summary>
    public Budget Budget { get; set; }

    public int VariableCount { get; private set; }

    public int ClauseCount => _given.Count;

    /// <summary>After an unsatisfiable query: the assumptions that sufficed for it.</summary>
    public IReadOnlyList<Literal> Core => _core;

    private int Level => _levelStarts.Count;

    public Literal NewVariable() => NewVariable(true);

    /// <summary>
    /// A variable that propagation sets once the others are set, or whose clauses all hold when it is
    /// false: it need not be guessed.
    /// </summary>
    public Literal NewDependent() => NewVariable(false);

    /// <summary>The next question is about this variable: it is guessed before those that mattered to earlier ones, and as if so many conflicts had been about it.</summary>
    public void Prefer(int variable, double conflicts) => _order.Prefer(variable, conflicts);

    /// <summary>The value in the model of the last satisfiable query.</summary>
    public bool ModelValue(Literal literal) => _model[literal.Variable] != literal.IsNegated;

    /// <summary>Adds a clause for good; what was kept of the last query is undone as far as the clause has a say in it.</summary>
    public void AddClause(params ReadOnlySpan<Literal> literals)
    {
        if (_contradictory)
        {
            return;
        }

        List<Literal> kept = new(literals.Length);
        ICollection<Literal> known = literals.Length > LongClause ? new HashSet<Literal>(literals.Length) : kept;
        foreach (Literal literal in literals)
        {
            int value = _levels[literal.Variable] == 0 ? _values[literal.Code] : 0;
            if (value > 0 || known.Contains(!literal))
            {
                return;
            }

            if (value == 0 && !known.Contains(literal))
            {
                kept.Add(literal);
                if (known != kept)
                {
                    known.Add(literal);
                }
            }
        }

        switch (kept.Count)
        {
            case 0:
                _contradictory = true;
                break;
            case 1:
                BackTo(0);
                Assign(kept[0], NoReason);
                _contradictory = Propagate() != NoReason;
                break;
            default:
                Attach(CollectionsMarshal.AsSpan(kept));
                break;
        }
    }

    /// <summary>Makes a literal false for good that no later query assumes: at the next occasion.</summary>
    public void Retire(Literal guard) => _retired.Add(guard);

    /// <summary>Watches the two literals that become false last, and draws the consequence if the others already are.</summary>
    private void Attach(Span<Literal> literals)
    {
        PutLastFalsified(literals, 0);
        PutLastFalsified(literals, 1);
        int second = FalsifiedAt(literals[1]);
        if (second < int.MaxValue)
        {
            bool holdsBySecond = _values[literals[0].Code] > 0 && _levels[literals[0].Variable] <= second;
            if (!holdsBySecond)
            {
                BackTo(Math.Min(second, FalsifiedAt(literals[0]) - 1));
            }
        }

        int clause = Store(literals, 0);
        _given.Add(clause);
        if (_values[literals[0].Code] == 0 && _values[literals[1].Code] < 0)
        {
            Assign(literals[0], clause);
        }
    }

    private void PutLastFalsified(Span<Literal> literals, int place)
    {
        for (int index = place + 1; index < literals.Length; index++)
        {
            if (FalsifiedAt(literals[index]) > FalsifiedAt(literals[place]))
            {
                (literals[place], literals[index]) = (literals[index], literals[place]);
            }
        }
    }

    /// <summary>The level at which the literal has become false; more than any for one that has not.</summary>
    private int FalsifiedAt(Literal literal) => _values[literal.Code] < 0 ? _levels[literal.Variable] : int.MaxValue;

    private Literal NewVariable(bool isChoice)
    {
        int variable = VariableCount++;
        if (variable == _levels.Length)
        {
            Grow();
        }

        _order.AddVariable(isChoice);
        return Literal.Of(variable);
    }

    private int Store(ReadOnlySpan<Literal> literals, int blockDistance)
    {
        int clause = _clausesEnd;
        int end = clause + ClauseHeader + literals.Length;
        if (end > _clauses.Length)
        {
            Array.Resize(ref _clauses, Math.Max(end, 2 * _clauses.Length));
        }

        _clauses[clause] = literals.Length;
        _clauses[clause + 1] = blockDistance;
        for (int index = 0; index < literals.Length; index++)
        {
            _clauses[clause + ClauseHeader + index] = literals[index].Code;
        }

        _clausesEnd = end;
        _watches[literals[0].Code].Add(clause, literals[1]);
        _watches[literals[1].Code].Add(clause, literals[0]);
        return clause;
    }

    private Span<int> LiteralsOf(int clause) => _clauses.AsSpan(clause + ClauseHeader, _clauses[clause]);

    private void Assign(Literal literal, int reason)
    {
        _values[literal.Code] = 1;
        _values[literal.Code ^ 1] = -1;
        _levels[literal.Variable] = Level;
        _reasons[literal.Variable] = reason;
        _trail[_trailEnd++] = literal;
    }

    private void BackTo(int level)
    {
        if (Level <= level)
        {
            return;
        }

        int start = _levelStarts[level];
        for (int index = _trailEnd - 1; index >= start; index--)
        {
            Literal literal = _trail[index];
            _values[literal.Code] = 0;
            _values[literal.Code ^ 1] = 0;
            _phases[literal.Variable] = !literal.IsNegated;
            _order.Insert(literal.Variable);
        }

        _trailEnd = start;
        _propagated = Math.Min(_propagated, start);
        _levelStarts.RemoveRange(level, _levelStarts.Count - level);
    }

    private void Grow()
    {
        int size = 2 * _levels.Length;
        Array.Resize(ref _levels, size);
        Array.Resize(ref _reasons, size);
        Array.Resize(ref _phases, size);
        Array.Resize(ref _seen, size);
        Array.Resize(ref _trail, size);
        Array.Resize(ref _values, 2 * size);
        Array.Resize(ref _watches, 2 * size);
    }
}
