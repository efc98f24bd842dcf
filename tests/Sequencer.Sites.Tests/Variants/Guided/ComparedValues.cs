using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Traces;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// The values of an integer input at which something in the program tips: what it is compared with, one less and one more,
/// the ends of its range, and one between each two of these. An input reaches a comparison through choices and through the
/// states that keep it; what these may be is guessed, and a wrong guess is only a value more.
/// </summary>
internal sealed class ComparedValues
{
    private const int MostForms = 6;
    private const int MostValues = 48;
    private const int Rounds = 3;

    private readonly ImmutableArray<TraceInput> _inputs;
    private readonly Dictionary<Variable, Form[]> _states = [];
    private readonly Dictionary<Expression, Form[]> _forms = [];
    private readonly SortedSet<long>[] _values;

    private ComparedValues(TransitionSystem system, ImmutableArray<TraceInput> inputs)
    {
        _inputs = inputs;
        _values = [.. inputs.Select(input => new SortedSet<long> { input.Variable.Range.Minimum, input.Variable.Range.Maximum, input.Rest })];
        Expression[] all = ExpressionGraph.InOrder([
            .. system.States.Select(state => state.Next), .. system.Outputs.Select(output => output.Value), .. system.Requirements.Select(requirement => requirement.Holds)]);
        for (int round = 0; round < Rounds; round++)
        {
            _forms.Clear();
            foreach (Expression expression in all)
            {
                _forms[expression] = Forms(expression);
            }

            foreach (StateVariable state in system.States.Where(state => state.Variable.Sort == Sort.Integer))
            {
                _states[state.Variable] = [.. _forms[state.Next].Where(form => form.Input >= 0)];
            }
        }

        foreach (Expression expression in all.Where(one => one.Kind is ExpressionKind.Equal or ExpressionKind.Less or ExpressionKind.LessOrEqual))
        {
            Compare(_forms[expression.Operands[0]], _forms[expression.Operands[1]]);
        }
    }

    /// <summary>For each input, in the order of the system's; of a Boolean both values.</summary>
    public static ImmutableArray<long[]> Of(TransitionSystem system, ImmutableArray<TraceInput> inputs)
    {
        ComparedValues compared = new(system, inputs);
        return [.. inputs.Select((input, place) => input.Variable.Range.Maximum - input.Variable.Range.Minimum <= 1
            ? [input.Variable.Range.Minimum, input.Variable.Range.Maximum]
            : WithMiddles(compared._values[place]))];
    }

    private static long[] WithMiddles(SortedSet<long> values)
    {
        long[] edges = [.. values];
        long[] all = [.. edges.Zip(edges.Skip(1), (low, high) => low + ((high - low) / 2)).Concat(edges).Distinct().Order()];
        return all.Length <= MostValues ? all : [.. Enumerable.Range(0, MostValues).Select(place => all[place * (all.Length - 1) / (MostValues - 1)])];
    }

    private void Compare(Form[] left, Form[] right)
    {
        foreach (Form one in left)
        {
            foreach (Form other in right)
            {
                Tip(one, other);
                Tip(other, one);
            }
        }
    }

    private void Tip(Form of, Form against)
    {
        if (of.Input < 0 || of.Input == against.Input)
        {
            return;
        }

        long level = against.Offset - of.Offset + (against.Input < 0 ? 0 : against.Factor * _inputs[against.Input].Rest);
        IntegerRange range = _inputs[of.Input].Variable.Range;
        foreach (long value in (long[])[(level / of.Factor) - 1, level / of.Factor, (level / of.Factor) + 1])
        {
            if (range.Contains(value))
            {
                _values[of.Input].Add(value);
            }
        }
    }

    private Form[] Forms(Expression expression) => expression.Sort != Sort.Integer ? [] : expression.Kind switch
    {
        ExpressionKind.Constant => [new Form(-1, 0, expression.Value)],
        ExpressionKind.Variable when expression.Variable!.Role == VariableRole.Input => [new Form(expression.Variable.Index, 1, 0)],
        ExpressionKind.Variable => _states.GetValueOrDefault(expression.Variable!, []),
        ExpressionKind.Scale => [.. _forms[expression.Operands[0]].Select(form => new Form(form.Input, form.Factor * expression.Value, form.Offset * expression.Value))],
        ExpressionKind.IfThenElse => [.. _forms[expression.Operands[1]].Concat(_forms[expression.Operands[2]]).Distinct().Take(MostForms)],
        ExpressionKind.Add => expression.Operands.Select(operand => _forms[operand]).Aggregate(Sum),
        _ => [],
    };

    private static Form[] Sum(Form[] left, Form[] right) =>
        [.. (from one in left
             from other in right
             where one.Input < 0 || other.Input < 0
             select new Form(Math.Max(one.Input, other.Input), one.Factor + other.Factor, one.Offset + other.Offset)).Distinct().Take(MostForms)];

    /// <summary>A factor times an input and an offset; without an input its place is -1.</summary>
    private readonly record struct Form(int Input, long Factor, long Offset);
}
