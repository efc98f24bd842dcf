using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Tests.Execution;

/// <summary>
/// The meaning of expressions in the plainest words, recursive and slow on purpose, to hold the fast
/// steppers against. It also demands that each value lies in the range its expression promises.
/// </summary>
internal sealed class ReferenceEvaluator
{
    private readonly IReadOnlyDictionary<string, long> _variables;
    private readonly Dictionary<Expression, long> _known = [];

    public ReferenceEvaluator(IReadOnlyDictionary<string, long> variables)
    {
        _variables = variables;
    }

    public long Value(Expression expression)
    {
        if (!_known.TryGetValue(expression, out long value))
        {
            value = Compute(expression);
            Assert.True(expression.Range.Contains(value), $"{value} is outside {expression.Range} of {expression}");
            _known[expression] = value;
        }

        return value;
    }

    private bool Holds(Expression expression) => Value(expression) == 1;

    private long Compute(Expression expression)
    {
        Expression[] operands = [.. expression.Operands];
        return expression.Kind switch
        {
            ExpressionKind.Constant => expression.Value,
            ExpressionKind.Variable => _variables[expression.Variable!.Name],
            ExpressionKind.Not => Truth(!Holds(operands[0])),
            ExpressionKind.And => Truth(operands.All(Holds)),
            ExpressionKind.Or => Truth(operands.Any(Holds)),
            ExpressionKind.Equal => Truth(Value(operands[0]) == Value(operands[1])),
            ExpressionKind.Less => Truth(Value(operands[0]) < Value(operands[1])),
            ExpressionKind.LessOrEqual => Truth(Value(operands[0]) <= Value(operands[1])),
            ExpressionKind.Add => operands.Aggregate(0L, (sum, operand) => checked(sum + Value(operand))),
            ExpressionKind.Scale => checked(expression.Value * Value(operands[0])),
            ExpressionKind.IfThenElse => Holds(operands[0]) ? Value(operands[1]) : Value(operands[2]),
            _ => throw new NotSupportedException(expression.Kind.ToString()),
        };
    }

    private static long Truth(bool holds) => holds ? 1 : 0;
}
