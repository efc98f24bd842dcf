using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Testing;

/// <summary>
/// Makes valid transition systems from a seed: Booleans, modes, counters that stop at a limit, clocks,
/// clamped sums, outputs, definitions, assumptions, requirements and alarms over every kind of
/// expression. The same seed gives the same system.
/// </summary>
public sealed class RandomSystem
{
    private readonly Random _random;
    private readonly ExpressionBuilder _builder;
    private readonly List<Variable> _inputs = [];
    private readonly List<Variable> _states = [];
    private readonly RandomExpressions _expressions;

    private RandomSystem(int seed, ExpressionBuilder builder)
    {
        _random = new Random(seed);
        _builder = builder;
        _expressions = new RandomExpressions(builder, _random);
    }

    /// <summary>Every made-up thing comes from here.</summary>
    public static Origin Origin { get; } = new(new SourceSpan(new SourceText("random.seq", "random\n"), new TextSpan(0, 6)));

    /// <param name="seed">The same seed, the same system.</param>
    /// <param name="states">About how many state variables.</param>
    /// <param name="builder">Where the expressions are made; a fresh one if null.</param>
    public static TransitionSystem Create(int seed, int states = 12, ExpressionBuilder? builder = null) =>
        new RandomSystem(seed, builder ?? new ExpressionBuilder()).Create(states);

    /// <summary>Fills in inputs for a scan: within range, often at an end of it, often unchanged.</summary>
    public static void FillInputs(TransitionSystem system, Random random, Span<long> inputs)
    {
        for (int index = 0; index < inputs.Length; index++)
        {
            IntegerRange range = system.Inputs[index].Range;
            int choice = random.Next(8);
            inputs[index] = choice switch
            {
                0 => range.Minimum,
                1 => range.Maximum,
                2 or 3 => random.NextInt64(range.Minimum, range.Maximum + 1),
                _ => Math.Clamp(inputs[index], range.Minimum, range.Maximum),
            };
        }
    }

    private TransitionSystem Create(int states)
    {
        for (int count = 2 + _random.Next(6); count > 0; count--)
        {
            AddVariable(VariableRole.Input, _random.Next(2) == 0 ? IntegerRange.Boolean : RandomRange(), _inputs);
        }

        AddVariable(VariableRole.Input, IntegerRange.Boolean, _inputs);
        for (int count = 1 + (states / 2) + _random.Next(states); count > 0; count--)
        {
            AddVariable(VariableRole.State, _random.Next(2) == 0 ? IntegerRange.Boolean : RandomRange(), _states);
        }

        _expressions.Grow(4 * states);
        ImmutableArray<StateVariable> stateVariables = [.. _states.Select(State)];
        return TransitionSystem.Create(
            "random",
            100,
            [.. _inputs],
            stateVariables,
            [.. Named("out").Select(name => new OutputVariable(name, _expressions.Any(), Origin))],
            [.. Named("fact").Select(name => new Definition(name, _expressions.Boolean(), Origin))],
            [.. Named("A").Select(name => new Assumption(name, "assumed", _expressions.Boolean(), Origin))],
            [.. Named("H").Select(name => new Requirement(name, "required", $"never {name}", RequirementKind.Never, _expressions.Boolean(), Origin))],
            [.. Named("alarm").Select(name => new Alarm(name, "look", _expressions.Boolean(), Origin))]);
    }

    private IEnumerable<string> Named(string stem) =>
        Enumerable.Range(1, 1 + _random.Next(4)).Select(number => stem + number.ToString(CultureInfo.InvariantCulture));

    private void AddVariable(VariableRole role, IntegerRange range, List<Variable> variables)
    {
        Sort sort = range == IntegerRange.Boolean ? Sort.Boolean : Sort.Integer;
        string name = FormattableString.Invariant($"{(role == VariableRole.Input ? "in" : "st")}{variables.Count}.{sort}");
        Variable variable = new(name, role, variables.Count, sort, range);
        variables.Add(variable);
        _expressions.Offer(_builder.Variable(variable));
    }

    private IntegerRange RandomRange() => _random.Next(5) switch
    {
        0 => new IntegerRange(0, 9),
        1 => new IntegerRange(0, 1 + _random.Next(100_000)),
        2 => new IntegerRange(-_random.Next(1000), _random.Next(1000)),
        3 => new IntegerRange(0, 1400),
        _ => new IntegerRange(0, 2 + _random.Next(4)),
    };

    private StateVariable State(Variable variable)
    {
        Expression next = variable.Sort == Sort.Boolean ? _expressions.Boolean() : NextInteger(variable);
        long initial = _random.Next(2) == 0 ? variable.Range.Minimum : _random.NextInt64(variable.Range.Minimum, variable.Range.Maximum + 1);
        return new StateVariable(variable, initial, next, _random.Next(2) == 0, StatePurpose.Control, Origin);
    }

    private Expression NextInteger(Variable variable)
    {
        Expression current = _builder.Variable(variable);
        Expression lowest = _builder.Constant(variable.Range.Minimum);
        Expression highest = _builder.Constant(variable.Range.Maximum);
        Expression counted = _builder.Minimum(highest, _builder.Add(current, _builder.Constant(1 + _random.Next(3))));
        return _random.Next(4) switch
        {
            0 => _builder.IfThenElse(_expressions.Boolean(), counted, lowest),
            1 => _builder.IfThenElse(_expressions.Boolean(), lowest, _builder.IfThenElse(_expressions.Boolean(), counted, current)),
            2 => _builder.IfThenElse(_expressions.Boolean(), current, _builder.IfThenElse(_expressions.Boolean(), lowest, highest)),
            _ => _builder.Maximum(lowest, _builder.Minimum(highest, _expressions.Integer())),
        };
    }
}
