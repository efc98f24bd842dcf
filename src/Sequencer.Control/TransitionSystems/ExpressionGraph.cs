namespace Sequencer.Control.TransitionSystems;

/// <summary>Walks over shared expressions without recursion, safe however deep they are.</summary>
public static class ExpressionGraph
{
    /// <summary>Every expression below the roots, each once, operands before users.</summary>
    public static Expression[] InOrder(IEnumerable<Expression> roots)
    {
        HashSet<Expression> seen = [];
        Stack<Expression> open = new(roots);
        while (open.TryPop(out Expression? expression))
        {
            if (seen.Add(expression))
            {
                foreach (Expression operand in expression.Operands)
                {
                    open.Push(operand);
                }
            }
        }

        Expression[] ordered = [.. seen];
        Array.Sort(ordered, static (left, right) => left.Id.CompareTo(right.Id));
        return ordered;
    }

    /// <summary>The variables that the roots read.</summary>
    public static IReadOnlyList<Variable> Variables(IEnumerable<Expression> roots) =>
        [.. InOrder(roots).Where(expression => expression.Kind == ExpressionKind.Variable).Select(expression => expression.Variable!)];
}
