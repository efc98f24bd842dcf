using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Benchmarks;

/// <summary>
/// A made-up plant of units alike, each with a chain of ten steps with clocks, a trip, a pump and what
/// it has given: as a transition system. <see cref="HandWrittenPlant"/> is the same in plain C#.
/// </summary>
internal sealed class BatchPlant
{
    public const int Steps = 10;
    public const int LongestClock = 100_000;
    public const int LargestTotal = 100_000;
    public const int HighLevel = 5500;
    public const int InputsOfUnit = 3;

    private readonly ExpressionBuilder _builder = new();
    private readonly List<Variable> _inputs = [];
    private readonly List<Variable> _states = [];
    private readonly List<StateVariable> _next = [];
    private readonly List<OutputVariable> _outputs = [];

    private BatchPlant()
    {
    }

    public static int LimitOf(int step) => 20 + (7 * step);

    public static int LevelOf(int step) => 400 * step;

    public static TransitionSystem Create(int units)
    {
        BatchPlant plant = new();
        for (int unit = 0; unit < units; unit++)
        {
            plant.AddUnit(string.Create(CultureInfo.InvariantCulture, $"R{101 + unit}"));
        }

        Expression apart = plant._builder.Not(plant._builder.And(plant._outputs[0].Value, plant._outputs[1].Value));
        Requirement requirement = new("H1", "Valve and pump apart", "never R101.pump and R101.valve", RequirementKind.Never, apart, RandomSystem.Origin);
        return TransitionSystem.Create("batch plant", 100, [.. plant._inputs], [.. plant._next], [.. plant._outputs], [], [], [requirement], []);
    }

    private void AddUnit(string unit)
    {
        Expression start = Input($"{unit}.start", IntegerRange.Boolean);
        Expression abort = Input($"{unit}.abort", IntegerRange.Boolean);
        Expression level = Input($"{unit}.level", new IntegerRange(0, 6000));
        Expression[] active = [.. Enumerable.Range(0, Steps).Select(step => State(FormattableString.Invariant($"{unit}.step{step}.active"), IntegerRange.Boolean))];
        Expression[] clock = [.. Enumerable.Range(0, Steps).Select(step => State(FormattableString.Invariant($"{unit}.step{step}.clock"), new IntegerRange(0, LongestClock)))];
        Expression tripped = State($"{unit}.tripped", IntegerRange.Boolean);
        Expression total = State($"{unit}.total", new IntegerRange(0, LargestTotal));
        Expression trip = _builder.Or(abort, _builder.And(tripped, _builder.Not(start)));
        Expression quiet = _builder.Not(trip);
        Expression begins = _builder.And(start, _builder.Not(_builder.Or(active)));
        Expression[] clears = [.. Enumerable.Range(0, Steps).Select(step => _builder.And(
            active[step],
            _builder.LessOrEqual(_builder.Constant(LimitOf(step)), clock[step]),
            _builder.Less(_builder.Constant(LevelOf(step)), level)))];
        for (int step = 0; step < Steps; step++)
        {
            Expression stays = _builder.And(active[step], _builder.Not(clears[step]));
            Expression enters = step == 0 ? begins : clears[step - 1];
            SetNext(active[step], _builder.And(quiet, _builder.Or(stays, enters)));
            SetNext(clock[step], _builder.IfThenElse(_builder.And(stays, quiet), CountedTo(LongestClock, clock[step], 1), _builder.Constant(0L)));
        }

        Expression pump = _builder.And(_builder.Or(active[2], active[5]), quiet, _builder.Less(level, _builder.Constant(HighLevel)));
        SetNext(tripped, trip);
        SetNext(total, _builder.IfThenElse(begins, _builder.Constant(0L), _builder.IfThenElse(pump, CountedTo(LargestTotal, total, 3), total)));
        _outputs.Add(new OutputVariable($"{unit}.pump", pump, RandomSystem.Origin));
        _outputs.Add(new OutputVariable($"{unit}.valve", _builder.And(active[1], quiet), RandomSystem.Origin));
    }

    private Expression CountedTo(long limit, Expression counter, long by) =>
        _builder.Minimum(_builder.Constant(limit), _builder.Add(counter, _builder.Constant(by)));

    private Expression Input(string name, IntegerRange range)
    {
        _inputs.Add(new Variable(name, VariableRole.Input, _inputs.Count, SortOf(range), range));
        return _builder.Variable(_inputs[^1]);
    }

    private Expression State(string name, IntegerRange range)
    {
        _states.Add(new Variable(name, VariableRole.State, _states.Count, SortOf(range), range));
        _next.Add(new StateVariable(_states[^1], 0, _builder.Constant(0L), false, StatePurpose.Control, RandomSystem.Origin));
        return _builder.Variable(_states[^1]);
    }

    private static Sort SortOf(IntegerRange range) => range == IntegerRange.Boolean ? Sort.Boolean : Sort.Integer;

    private void SetNext(Expression state, Expression next)
    {
        int index = state.Variable?.Index ?? throw new ArgumentException("not a state", nameof(state));
        _next[index] = _next[index] with { Next = next };
    }
}
