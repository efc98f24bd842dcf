using System.Diagnostics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Runs;

/// <summary>
/// Evaluates expressions at one state and, given the change a scan brings, how they change from scan to
/// scan while no comparison among them flips. A way over thousands of like scans, for search only:
/// whatever it finds is replayed scan by scan elsewhere.
/// </summary>
internal sealed class AffineScan
{
    private readonly Expression[] _order;
    private readonly int[][] _operands;
    private readonly long[] _values;
    private readonly long[] _changes;
    private readonly Dictionary<Expression, int> _places = [];

    public AffineScan(IEnumerable<Expression> roots)
    {
        _order = ExpressionGraph.InOrder(roots);
        for (int place = 0; place < _order.Length; place++)
        {
            _places.Add(_order[place], place);
        }

        _operands = [.. _order.Select(expression => expression.Operands.Select(operand => _places[operand]).ToArray())];
        _values = new long[_order.Length];
        _changes = new long[_order.Length];
    }

    public int PlaceOf(Expression root) => _places[root];

    public long Value(int place) => _values[place];

    public long Change(int place) => _changes[place];

    public void Evaluate(ReadOnlySpan<long> inputs, ReadOnlySpan<long> states)
    {
        for (int place = 0; place < _order.Length; place++)
        {
            _values[place] = Evaluate(_order[place], _operands[place], inputs, states);
        }
    }

    /// <summary>
    /// With the states changing by <paramref name="stateChanges"/> a scan from the values of the last
    /// evaluation: sets every expression's change, and answers for how many scans no comparison flips
    /// (the largest number if none ever does).
    /// </summary>
    public long Project(ReadOnlySpan<long> stateChanges)
    {
        long steady = long.MaxValue;
        for (int place = 0; place < _order.Length; place++)
        {
            Expression expression = _order[place];
            int[] operands = _operands[place];
            _changes[place] = expression.Kind switch
            {
                ExpressionKind.Variable => expression.Variable!.Role == VariableRole.State ? stateChanges[expression.Variable.Index] : 0,
                ExpressionKind.Add => operands.Sum(operand => _changes[operand]),
                ExpressionKind.Scale => expression.Value * _changes[operands[0]],
                ExpressionKind.IfThenElse => _changes[_values[operands[0]] != 0 ? operands[1] : operands[2]],
                _ => 0,
            };
            if (expression.Kind is ExpressionKind.Equal or ExpressionKind.Less or ExpressionKind.LessOrEqual)
            {
                long difference = _values[operands[0]] - _values[operands[1]];
                steady = Math.Min(steady, Steady(expression.Kind, difference, _changes[operands[0]] - _changes[operands[1]]));
            }
        }

        return steady;
    }

    /// <summary>For how many scans difference + k * change keeps its place relative to zero, at least one.</summary>
    private static long Steady(ExpressionKind kind, long difference, long change)
    {
        if (change == 0)
        {
            return long.MaxValue;
        }

        if (change < 0)
        {
            (difference, change) = (-difference, -change);
            kind = kind switch
            {
                ExpressionKind.Less => ExpressionKind.LessOrEqual,
                ExpressionKind.LessOrEqual => ExpressionKind.Less,
                _ => kind,
            };
        }

        long flipAt = kind switch
        {
            ExpressionKind.Less => difference < 0 ? CeilingOf(-difference, change) : long.MaxValue,
            ExpressionKind.LessOrEqual => difference <= 0 ? (-difference / change) + 1 : long.MaxValue,
            _ when difference == 0 => 1,
            _ => difference < 0 && -difference % change == 0 ? -difference / change : long.MaxValue,
        };
        return flipAt;
    }

    private static long CeilingOf(long dividend, long divisor) => (dividend + divisor - 1) / divisor;

    private long Evaluate(Expression expression, int[] operands, ReadOnlySpan<long> inputs, ReadOnlySpan<long> states)
    {
        switch (expression.Kind)
        {
            case ExpressionKind.Constant:
                return expression.Value;
            case ExpressionKind.Variable:
                Variable variable = expression.Variable!;
                return variable.Role == VariableRole.Input ? inputs[variable.Index] : states[variable.Index];
            case ExpressionKind.Not:
                return 1 - _values[operands[0]];
            case ExpressionKind.And:
                return Array.TrueForAll(operands, operand => _values[operand] != 0) ? 1 : 0;
            case ExpressionKind.Or:
                return Array.Exists(operands, operand => _values[operand] != 0) ? 1 : 0;
            case ExpressionKind.Equal:
                return _values[operands[0]] == _values[operands[1]] ? 1 : 0;
            case ExpressionKind.Less:
                return _values[operands[0]] < _values[operands[1]] ? 1 : 0;
            case ExpressionKind.LessOrEqual:
                return _values[operands[0]] <= _values[operands[1]] ? 1 : 0;
            case ExpressionKind.Add:
                return operands.Sum(operand => _values[operand]);
            case ExpressionKind.Scale:
                return expression.Value * _values[operands[0]];
            case ExpressionKind.IfThenElse:
                return _values[_values[operands[0]] != 0 ? operands[1] : operands[2]];
            default:
                throw new UnreachableException($"no evaluation of {expression.Kind}");
        }
    }
}
