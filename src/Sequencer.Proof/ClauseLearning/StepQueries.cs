using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>
/// Questions about one exact scan, its states seen through facts: one solver holds the scan, the facts
/// before and after it, and the learnt clauses, switched on frame by frame.
/// </summary>
internal sealed class StepQueries
{
    private readonly Circuit _circuit;
    private readonly Scan _scan;
    private readonly Encoding _after;
    private readonly FactTable _facts;
    private readonly Literal _assumed;
    private readonly Literal _bad;
    private readonly Literal _initial;
    private readonly List<Literal> _before = [];
    private readonly List<Literal> _next = [];
    private readonly List<Literal> _frames = [];
    private readonly Dictionary<Literal, Literal> _factOfNext = [];
    private readonly Dictionary<Literal, Literal> _factOfBefore = [];

    public StepQueries(TransitionSystem system, FactTable facts, Budget budget)
    {
        _facts = facts;
        Solver = new Solver(budget);
        _circuit = new Circuit(Solver);
        _scan = Scan.FromAnywhere(_circuit, system);
        _after = _scan.EncodingAfter();
        _assumed = _circuit.And(system.Assumptions.Select(assumption => _scan.Encoding.Boolean(assumption.Holds)));
        _bad = !_scan.Encoding.Boolean(system.Requirements[0].Holds);
        _initial = Solver.NewDependent();
        foreach (Literal bit in StateBits([.. system.States.Select(state => state.Initial)]))
        {
            Solver.AddClause(!_initial, bit);
        }

        LearnFacts();
    }

    public Solver Solver { get; }

    /// <summary>Encodes facts that were added to the table since.</summary>
    public void LearnFacts()
    {
        for (int number = _before.Count; number < _facts.Count; number++)
        {
            _before.Add(_scan.Encoding.Boolean(_facts.Facts[number]));
            _next.Add(_after.Boolean(_facts.Facts[number]));
        }
    }

    public void AddBlocked(Cube cube, int frame)
    {
        while (_frames.Count <= frame)
        {
            _frames.Add(Solver.NewDependent());
        }

        Solver.AddClause([!_frames[frame], .. cube.Literals.Select(literal => !Before(literal))]);
    }

    /// <summary>Makes known, for good, that no reachable state is in the cube.</summary>
    public void AddLemma(Cube cube) => Solver.AddClause([.. cube.Literals.Select(literal => !Before(literal))]);

    /// <summary>Whether a state of the frame breaks the requirement; then the model shows one.</summary>
    public bool CanFail(int frame) => Solver.Solve([_assumed, .. FrameAssumptions(frame), _bad]);

    /// <summary>
    /// Whether a scan leads from the frame, outside the cube, into it. If not, <paramref name="enough"/>
    /// are literals of the cube that suffice for that.
    /// </summary>
    public bool CanEnter(Cube cube, int frame, out Literal[] enough)
    {
        Literal guard = Solver.NewDependent();
        Solver.AddClause([!guard, .. cube.Literals.Select(literal => !Before(literal))]);
        _factOfNext.Clear();
        foreach (Literal literal in cube.Literals)
        {
            _factOfNext[Next(literal)] = literal;
        }

        Literal[] assumptions = [_assumed, .. FrameAssumptions(frame), guard, .. cube.Literals.Select(Next)];
        bool can = Solver.Solve(assumptions);
        enough = can ? [] : [.. Solver.Core.Where(_factOfNext.ContainsKey).Select(literal => _factOfNext[literal]).Distinct()];
        Solver.Retire(guard);
        return can;
    }

    public ImmutableArray<long> ModelInputs() => _scan.ModelInputs();

    public ImmutableArray<long> ModelStates() => _scan.ModelStates();

    /// <summary>
    /// The largest cube we find around a state all of whose states do, by the same inputs, what the
    /// state does: reach the target, or fail where it is null. Where facts do not suffice for that, all
    /// facts about the integers that matter are kept: the cube then is only our best knowledge.
    /// </summary>
    public (Cube Cube, IReadOnlySet<int> Exact) Lift(ImmutableArray<long> states, ImmutableArray<long> inputs, Cube? target)
    {
        Literal guard = Solver.NewDependent();
        Literal[] goal = target is null ? [_bad] : [.. target.Literals.Select(Next)];
        Solver.AddClause([!guard, !_assumed, .. goal.Select(literal => !literal)]);
        bool[] values = _facts.Values(states.AsSpan());
        Literal[] facts = [.. Enumerable.Range(0, values.Length).Select(number => Literal.Of(number, !values[number]))];
        _factOfBefore.Clear();
        foreach (Literal fact in facts)
        {
            _factOfBefore.TryAdd(Before(fact), fact);
        }

        Literal[] known = [.. InputBits(inputs), .. facts.Select(Before), guard];
        HashSet<Literal> kept = [];
        HashSet<int> exact = [];
        if (Solver.Solve(known))
        {
            bool open = Solver.Solve([.. known, .. StateBits(states)]);
            System.Diagnostics.Debug.Assert(!open, "one state and its inputs have one outcome");
            exact = StatesThatMatter(states);
            kept.UnionWith(facts.Where(fact => exact.Overlaps(_facts.Support(fact.Variable))));
            exact.RemoveWhere(state => _scan.States[state].Width == 1);
        }

        kept.UnionWith(Solver.Core.Where(_factOfBefore.ContainsKey).Select(literal => _factOfBefore[literal]));
        Solver.Retire(guard);
        return (new Cube(kept), exact);
    }

    /// <summary>
    /// Whether one scan leads from exactly this state into the target, or fails where it is null, with
    /// as many of the wishes as can be had, earlier ones first.
    /// </summary>
    public bool CanStep(ImmutableArray<long> states, Cube? target, IEnumerable<Literal> wishes)
    {
        // Encoding a wish may make gates, which only a later query gives values to.
        Literal[] wanted = [.. wishes];
        List<Literal> granted = [_assumed, .. StateBits(states), .. target is null ? [_bad] : target.Literals.Select(Next)];
        if (!Solver.Solve([.. granted]))
        {
            return false;
        }

        foreach (Literal wish in wanted)
        {
            if (Solver.ModelValue(wish) || Solver.Solve([.. granted, wish]))
            {
                granted.Add(wish);
            }
        }

        return true;
    }

    /// <summary>Whether one scan leads from exactly this state to where any of the facts is true.</summary>
    public bool CanStepToAny(ImmutableArray<long> states, IEnumerable<Literal> facts) => CanStepToAny(states, facts.Select(Next), [], []);

    /// <summary>
    /// Whether one scan leads from exactly this state to where one of the literals after the scan is true, and all of those required;
    /// if so with as many of the facts kept as they are as the solver can be brought to in a few tries.
    /// </summary>
    public bool CanStepToAny(ImmutableArray<long> states, IEnumerable<Literal> afterScan, IEnumerable<Literal> required, IEnumerable<Literal> kept)
    {
        Literal guard = Solver.NewDependent();
        Solver.AddClause([!guard, .. afterScan]);
        List<Literal> wishes = [.. kept.Select(Next)];
        Literal[] needed = [_assumed, .. StateBits(states), .. required, guard];
        bool can;
        while (!(can = Solver.Solve([.. needed, .. wishes])))
        {
            HashSet<Literal> core = [.. Solver.Core];
            if (wishes.RemoveAll(core.Contains) == 0)
            {
                break;
            }
        }

        Solver.Retire(guard);
        return can;
    }

    /// <summary>
    /// Whether one scan would lead to where one of the literals after the scan is true from a state that is exactly this one but for those
    /// that are free; if so the values that these have then.
    /// </summary>
    public ImmutableDictionary<int, long>? ValuesThatWouldDo(ImmutableArray<long> states, IReadOnlySet<int> free, Literal afterScan)
    {
        IEnumerable<Literal> fixedBits = states.SelectMany((value, index) => free.Contains(index) ? [] : Bits(_scan.States[index], value));
        if (!Solver.Solve([_assumed, .. fixedBits, afterScan]))
        {
            return null;
        }

        ImmutableArray<long> found = _scan.ModelStates();
        return free.ToImmutableDictionary(state => state, state => found[state]);
    }

    /// <summary>The literal of a fact after the scan.</summary>
    public Literal FactAfterScan(Literal fact) => Next(fact);

    /// <summary>After a query about exactly one state that was refused: the states whose values matter for that.</summary>
    public HashSet<int> StatesThatMatter(ImmutableArray<long> states)
    {
        HashSet<Literal> core = [.. Solver.Core];
        return [.. Enumerable.Range(0, states.Length).Where(state => Touches(state, states[state], core))];
    }

    /// <summary>A literal for a state's having a value, or a greater or smaller one, after the scan.</summary>
    public Literal AfterScan(Expression fact) => _after.Boolean(fact);

    private Literal Before(Literal fact) => _before[fact.Variable].NegatedIf(fact.IsNegated);

    private Literal Next(Literal fact) => _next[fact.Variable].NegatedIf(fact.IsNegated);

    private IEnumerable<Literal> FrameAssumptions(int frame) => frame == 0 ? [.. ((IEnumerable<Literal>)_frames).Reverse(), _initial] : _frames.Skip(frame).Reverse();

    private bool Touches(int state, long value, HashSet<Literal> core) => Bits(_scan.States[state], value).Any(core.Contains);

    private IEnumerable<Literal> StateBits(ImmutableArray<long> states) =>
        states.SelectMany((value, index) => Bits(_scan.States[index], value));

    private IEnumerable<Literal> InputBits(ImmutableArray<long> inputs) =>
        inputs.SelectMany((value, index) => Bits(_scan.Inputs[index], value));

    private IEnumerable<Literal> Bits(BitVector vector, long value) =>
        vector.Width == 1 ? [vector.Bits[0].NegatedIf(value == 0)] : vector.Fixed(value).Where(bit => !_circuit.IsConstant(bit));
}
