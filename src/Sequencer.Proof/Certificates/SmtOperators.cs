using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>The operators that a certificate may use, with the sorts they take.</summary>
internal static class SmtOperators
{
    /// <summary>The application as an expression, or why there is none.</summary>
    public static bool TryApply(ExpressionBuilder builder, string symbol, List<Expression> operands, out Expression value, out string problem)
    {
        value = builder.False;
        problem = string.Empty;
        try
        {
            if (Apply(builder, symbol, operands) is Expression applied)
            {
                value = applied;
                return true;
            }

            problem = $"applies `{symbol}` to {operands.Count} operands of the wrong sort or number";
        }
        catch (OverflowException)
        {
            problem = $"applies `{symbol}` to numbers whose result may not fit 64 bits";
        }

        return false;
    }

    private static Expression? Apply(ExpressionBuilder builder, string symbol, List<Expression> operands)
    {
        bool booleans = operands.All(static operand => operand.Sort == Sort.Boolean);
        bool integers = operands.All(static operand => operand.Sort == Sort.Integer);
        return (symbol, operands) switch
        {
            ("not", [var only]) when booleans => builder.Not(only),
            ("and", [_, _, ..]) when booleans => builder.And(operands),
            ("or", [_, _, ..]) when booleans => builder.Or(operands),
            ("=", [var left, var right]) when booleans || integers => builder.Equal(left, right),
            ("<", [var left, var right]) when integers => builder.Less(left, right),
            ("<=", [var left, var right]) when integers => builder.LessOrEqual(left, right),
            ("+", [_, _, ..]) when integers => builder.Add(operands),
            ("*", [{ IsConstant: true } factor, var scaled]) when integers => builder.Scale(factor.Value, scaled),
            ("ite", [{ Sort: Sort.Boolean } test, var then, var otherwise]) when then.Sort == otherwise.Sort => builder.IfThenElse(test, then, otherwise),
            _ => null,
        };
    }
}
