using Sequencer.Control.TransitionSystems;

namespace Sequencer.Testing;

/// <summary>Writes a small transition system line by line.</summary>
public sealed class Sketch
{
    private readonly List<Variable> _inputs = [];
    private readonly List<(Variable Variable, long Initial)> _states = [];
    private readonly Dictionary<Variable, Expression> _next = [];
    private readonly List<Assumption> _assumptions = [];
    private readonly List<Requirement> _requirements = [];

    public ExpressionBuilder Builder { get; } = new();

    public Expression Input(string name) => Input(name, IntegerRange.Boolean, Sort.Boolean);

    public Expression Input(string name, long lowest, long highest) => Input(name, new IntegerRange(lowest, highest), Sort.Integer);

    public Expression State(string name, bool initial = false) => State(name, IntegerRange.Boolean, Sort.Boolean, initial ? 1 : 0);

    public Expression State(string name, long lowest, long highest, long initial) => State(name, new IntegerRange(lowest, highest), Sort.Integer, initial);

    public void Next(Expression state, Expression next) => _next.Add(state.Variable!, next);

    /// <summary>A Boolean that is set and reset; resetting wins.</summary>
    public void Latch(Expression state, Expression set, Expression reset) =>
        Next(state, Builder.And(Builder.Or(state, set), Builder.Not(reset)));

    /// <summary>Counts scans while it runs, up to its range's end; else it is 0.</summary>
    public void Clock(Expression state, Expression runs) =>
        Next(state, Builder.IfThenElse(runs, CountedUp(state), Builder.Constant(0L)));

    /// <summary>One more, but not beyond the range.</summary>
    public Expression CountedUp(Expression state) =>
        Builder.Minimum(Builder.Add(state, Builder.Constant(1L)), Builder.Constant(state.Range.Maximum));

    public Expression Is(Expression integer, long value) => Builder.Equal(integer, Builder.Constant(value));

    public Expression AtLeast(Expression integer, long value) => Builder.GreaterOrEqual(integer, Builder.Constant(value));

    public Expression AtMost(Expression integer, long value) => Builder.LessOrEqual(integer, Builder.Constant(value));

    public Expression Not(Expression operand) => Builder.Not(operand);

    public Expression And(params Expression[] operands) => Builder.And(operands);

    public Expression Or(params Expression[] operands) => Builder.Or(operands);

    /// <summary>The value of the first case that is true.</summary>
    public Expression Choose(Expression otherwise, params (Expression When, long Value)[] cases) =>
        cases.Reverse().Aggregate(otherwise, (rest, next) => Builder.IfThenElse(next.When, Builder.Constant(next.Value), rest));

    public void Assume(string name, Expression holds) => _assumptions.Add(new Assumption(name, name, holds, RandomSystem.Origin));

    public void Require(string name, Expression holds) =>
        _requirements.Add(new Requirement(name, name, name, RequirementKind.Never, holds, RandomSystem.Origin));

    public void Never(string name, params Expression[] facts) => Require(name, Not(And(facts)));

    public TransitionSystem ToSystem() => TransitionSystem.Create(
        "sketch",
        100,
        [.. _inputs],
        [.. _states.Select(state => new StateVariable(state.Variable, state.Initial, _next[state.Variable], false, StatePurpose.Control, RandomSystem.Origin))],
        [],
        [],
        [.. _assumptions],
        [.. _requirements],
        []);

    private Expression Input(string name, IntegerRange range, Sort sort)
    {
        Variable variable = new(name, VariableRole.Input, _inputs.Count, sort, range);
        _inputs.Add(variable);
        return Builder.Variable(variable);
    }

    private Expression State(string name, IntegerRange range, Sort sort, long initial)
    {
        Variable variable = new(name, VariableRole.State, _states.Count, sort, range);
        _states.Add((variable, initial));
        return Builder.Variable(variable);
    }
}
