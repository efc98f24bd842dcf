using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>
/// Expressions of one scan in gates, given the variables' vectors. A Boolean is a vector of one bit
/// here, so that one table serves both sorts. The expressions must be of one builder.
/// </summary>
internal sealed class Encoding
{
    private readonly Gates _gates;
    private readonly Func<Variable, BitVector> _variables;
    private readonly Dictionary<Expression, BitVector> _known = [];
    private readonly Stack<Expression> _open = [];

    public Encoding(Gates gates, Func<Variable, BitVector> variables)
    {
        _gates = gates;
        _variables = variables;
    }

    public static BitVector OfBoolean(Literal literal) => new([literal]);

    /// <summary>A variable free within its range.</summary>
    public static BitVector Unknown(Gates gates, Variable variable) =>
        variable.Sort == Sort.Boolean && variable.Range == IntegerRange.Boolean
            ? OfBoolean(gates.NewVariable())
            : variable.Sort == Sort.Boolean ? Value(gates, variable, variable.Range.Minimum) : Arithmetic.Unknown(gates, variable.Range);

    public static BitVector Value(Gates gates, Variable variable, long value) =>
        variable.Sort == Sort.Boolean ? OfBoolean(gates.Constant(value == 1)) : Arithmetic.Constant(gates, value);

    public Literal Boolean(Expression expression) => Vector(expression).Bits[0];

    public BitVector Vector(Expression root)
    {
        _open.Push(root);
        while (_open.TryPeek(out Expression? expression))
        {
            if (_known.ContainsKey(expression))
            {
                _open.Pop();
                continue;
            }

            int before = _open.Count;
            foreach (Expression operand in expression.Operands)
            {
                if (!_known.ContainsKey(operand))
                {
                    _open.Push(operand);
                }
            }

            if (_open.Count == before)
            {
                _known[_open.Pop()] = Node(expression);
            }
        }

        return _known[root];
    }

    private BitVector Node(Expression expression) => expression.Kind switch
    {
        ExpressionKind.Constant when expression.Sort == Sort.Boolean => OfBoolean(_gates.Constant(expression.Value == 1)),
        ExpressionKind.Constant => Arithmetic.Constant(_gates, expression.Value),
        ExpressionKind.Variable => _variables(expression.Variable!),
        ExpressionKind.Not => OfBoolean(!Bit(expression, 0)),
        ExpressionKind.And => OfBoolean(_gates.And(expression.Operands.Select(operand => _known[operand].Bits[0]))),
        ExpressionKind.Or => OfBoolean(_gates.Or(expression.Operands.Select(operand => _known[operand].Bits[0]))),
        ExpressionKind.Equal => OfBoolean(Arithmetic.Equal(_gates, Operand(expression, 0), Operand(expression, 1))),
        ExpressionKind.Less => OfBoolean(Arithmetic.Less(_gates, Operand(expression, 0), Operand(expression, 1))),
        ExpressionKind.LessOrEqual => OfBoolean(Arithmetic.LessOrEqual(_gates, Operand(expression, 0), Operand(expression, 1))),
        ExpressionKind.Add => Sum(expression),
        ExpressionKind.Scale => Arithmetic.Scale(_gates, expression.Value, Operand(expression, 0), BitVector.WidthFor(expression.Range)),
        ExpressionKind.IfThenElse => Arithmetic.Choose(_gates, Bit(expression, 0), Operand(expression, 1), Operand(expression, 2)),
        _ => throw new System.Diagnostics.UnreachableException($"no encoding of {expression.Kind}"),
    };

    /// <summary>Partial sums may leave the sum's range, but modulo two to its width they come back.</summary>
    private BitVector Sum(Expression expression)
    {
        int width = BitVector.WidthFor(expression.Range);
        BitVector sum = Operand(expression, 0);
        for (int index = 1; index < expression.Operands.Length; index++)
        {
            sum = Arithmetic.Add(_gates, sum, Operand(expression, index), width);
        }

        return sum;
    }

    private BitVector Operand(Expression expression, int index) => _known[expression.Operands[index]];

    private Literal Bit(Expression expression, int index) => _known[expression.Operands[index]].Bits[0];
}
