using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Strengthening;

/// <summary>
/// How far a count that the requirement reads can be ahead of another clock while that clock's step is
/// active. The bounds grow from nothing, each time to the most that one scan allows, until no scan breaks
/// one: so the limits of the steps before add up by themselves. A bound that keeps growing is dropped.
/// </summary>
internal sealed class DifferenceBounds
{
    private const int MostRises = 5;

    private readonly TransitionSystem _system;
    private readonly ExpressionBuilder _builder;
    private readonly Circuit _circuit;
    private readonly Scan _scan;
    private readonly Encoding _after;
    private readonly Literal _assumed;
    private readonly FactTable _facts;
    private readonly List<Bound> _bounds = [];

    private DifferenceBounds(TransitionSystem system, ExpressionBuilder builder, FactTable facts, IEnumerable<Cube> known, Budget budget)
    {
        _system = system;
        _builder = builder;
        _facts = facts;
        _circuit = new Circuit(new Solver(budget));
        _scan = Scan.FromAnywhere(_circuit, system);
        _after = _scan.EncodingAfter();
        _assumed = _circuit.And(system.Assumptions.Select(assumption => _scan.Encoding.Boolean(assumption.Holds)));
        foreach (Cube cube in known)
        {
            _circuit.Solver.AddClause(!_scan.Encoding.Boolean(facts.Meaning(cube)));
        }
    }

    /// <summary>
    /// Cubes that no reachable state is in, with new facts in the table for them. What is
    /// <paramref name="known"/> already must be inductive by itself.
    /// </summary>
    public static IReadOnlyList<Cube> Find(TransitionSystem system, ExpressionBuilder builder, FactTable facts, IEnumerable<Cube> known, Budget budget)
    {
        DifferenceBounds bounds = new(system, builder, facts, known, budget);
        bounds.Propose();
        bounds.Grow();
        return bounds.ToCubes();
    }

    private void Propose()
    {
        StateVariable[] counts = [.. ExpressionGraph.Variables([_system.Requirements[0].Holds])
            .Where(variable => variable.Role == VariableRole.State && variable.Sort == Sort.Integer)
            .Select(variable => _system.States[variable.Index])];
        foreach (StateVariable clock in _system.States.Where(state => state.Variable.Sort == Sort.Integer))
        {
            Expression[] clockRuns = [.. RunsOnlyUnder(clock)];
            foreach (StateVariable count in counts.Where(count => count != clock && clockRuns.Length > 0))
            {
                Expression guard = _builder.And([.. clockRuns, .. RunsOnlyUnder(count)]);
                if (!CanFallBack(clock, guard))
                {
                    AddBound(guard, _builder.Subtract(_builder.Variable(count.Variable), _builder.Variable(clock.Variable)));
                }
            }
        }
    }

    /// <summary>Whether the clock can lose scans while the guard stays true.</summary>
    private bool CanFallBack(StateVariable clock, Expression guard) => _circuit.Solver.Solve(
        _assumed,
        _scan.Encoding.Boolean(guard),
        _after.Boolean(guard),
        _scan.Encoding.Boolean(_builder.Less(clock.Next, _builder.Variable(clock.Variable))));

    private void AddBound(Expression guard, Expression difference)
    {
        Bound bound = new(guard, difference);
        AffineScan scan = new([guard, difference]);
        scan.Evaluate([], SearchRun.InitialStates(_system).AsSpan());
        bound.Limit = scan.Value(scan.PlaceOf(guard)) != 0 ? scan.Value(scan.PlaceOf(difference)) : difference.Range.Minimum - 1;
        _after.Vector(difference);
        _bounds.Add(bound);
    }

    /// <summary>The Boolean states and values of enumerations without which the integer does not rise.</summary>
    private IEnumerable<Expression> RunsOnlyUnder(StateVariable state)
    {
        Expression rises = _builder.Greater(state.Next, _builder.Variable(state.Variable));
        HashSet<Variable> read = [.. ExpressionGraph.Variables([state.Next])];
        return _facts.Facts
            .Where(fact => fact.Kind is ExpressionKind.Variable or ExpressionKind.Equal && ExpressionGraph.Variables([fact]).All(read.Contains))
            .Where(guard => !_circuit.Solver.Solve(_assumed, _scan.Encoding.Boolean(rises), !_scan.Encoding.Boolean(guard)));
    }

    private void Grow()
    {
        Solver solver = _circuit.Solver;
        while (_bounds.Count > 0)
        {
            Literal[] assumptions = [_assumed, .. _bounds.Select(bound => _scan.Encoding.Boolean(Meaning(bound)))];
            Literal[] broken = [.. _bounds.Select(bound => !_after.Boolean(Meaning(bound)))];
            Literal any = solver.NewDependent();
            solver.AddClause([!any, .. broken]);
            if (!solver.Solve([.. assumptions, any]))
            {
                return;
            }

            Bound first = _bounds[Array.FindIndex(broken, literal => solver.ModelValue(literal))];
            Raise(first, [_after.Boolean(first.Guard), .. assumptions]);
            solver.Retire(any);
        }
    }

    /// <summary>Raises a bound that the present model breaks to the most that a scan allows, by halving.</summary>
    private void Raise(Bound bound, Literal[] assumptions)
    {
        long reached = _after.Vector(bound.Difference).ModelValue(_circuit.Solver);
        long most = bound.Difference.Range.Maximum;
        while (reached < most && bound.Rises < MostRises)
        {
            long middle = reached + ((most - reached + 1) / 2);
            Literal beyond = _after.Boolean(_builder.GreaterOrEqual(bound.Difference, _builder.Constant(middle)));
            if (_circuit.Solver.Solve([.. assumptions, beyond]))
            {
                reached = _after.Vector(bound.Difference).ModelValue(_circuit.Solver);
            }
            else
            {
                most = middle - 1;
            }
        }

        bound.Limit = reached;
        if (bound.Rises++ == MostRises || reached == bound.Difference.Range.Maximum)
        {
            _bounds.Remove(bound);
        }
    }

    private Expression Meaning(Bound bound) =>
        _builder.Implies(bound.Guard, _builder.LessOrEqual(bound.Difference, _builder.Constant(bound.Limit)));

    private List<Cube> ToCubes()
    {
        List<Cube> cubes = [];
        foreach (Bound bound in _bounds.Where(bound => !Meaning(bound).IsTrue))
        {
            IEnumerable<Expression> guards = bound.Guard.Kind == ExpressionKind.And ? bound.Guard.Operands
                : bound.Guard.IsTrue ? []
                : [bound.Guard];
            Expression within = _builder.LessOrEqual(bound.Difference, _builder.Constant(bound.Limit));
            Literal[] beyond = within.IsFalse ? [] : [!_facts.LiteralOf(within)];
            cubes.Add(new Cube([.. guards.Select(_facts.LiteralOf), .. beyond]));
        }

        return cubes;
    }

    private sealed class Bound(Expression guard, Expression difference)
    {
        public Expression Guard { get; } = guard;

        public Expression Difference { get; } = difference;

        public long Limit { get; set; }

        public int Rises { get; set; }
    }
}
