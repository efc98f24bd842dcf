using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Tests.TransitionSystems;

/// <summary>
/// An expression as written, before the builder simplifies it: what the builder's result has to be
/// equal to. Recursive on purpose.
/// </summary>
internal sealed record RawTerm(ExpressionKind Kind, long Value, Variable? Variable, params RawTerm[] Operands)
{
    public Expression Build(ExpressionBuilder builder)
    {
        Expression[] operands = [.. Operands.Select(operand => operand.Build(builder))];
        return Kind switch
        {
            ExpressionKind.Constant => builder.Constant(Value),
            ExpressionKind.Variable => builder.Variable(Variable!),
            ExpressionKind.Not => builder.Not(operands[0]),
            ExpressionKind.And => builder.And(operands),
            ExpressionKind.Or => builder.Or(operands),
            ExpressionKind.Equal => builder.Equal(operands[0], operands[1]),
            ExpressionKind.Less => builder.Less(operands[0], operands[1]),
            ExpressionKind.LessOrEqual => builder.LessOrEqual(operands[0], operands[1]),
            ExpressionKind.Add => builder.Add(operands),
            ExpressionKind.Scale => builder.Scale(Value, operands[0]),
            ExpressionKind.IfThenElse => builder.IfThenElse(operands[0], operands[1], operands[2]),
            _ => throw new NotSupportedException(Kind.ToString()),
        };
    }

    public long Evaluate(IReadOnlyDictionary<string, long> variables)
    {
        long[] values = [.. Operands.Select(operand => operand.Evaluate(variables))];
        return Kind switch
        {
            ExpressionKind.Constant => Value,
            ExpressionKind.Variable => variables[Variable!.Name],
            ExpressionKind.Not => 1 - values[0],
            ExpressionKind.And => values.Min(),
            ExpressionKind.Or => values.Max(),
            ExpressionKind.Equal => values[0] == values[1] ? 1 : 0,
            ExpressionKind.Less => values[0] < values[1] ? 1 : 0,
            ExpressionKind.LessOrEqual => values[0] <= values[1] ? 1 : 0,
            ExpressionKind.Add => values.Sum(),
            ExpressionKind.Scale => Value * values[0],
            ExpressionKind.IfThenElse => values[values[0] == 1 ? 1 : 2],
            _ => throw new NotSupportedException(Kind.ToString()),
        };
    }
}
