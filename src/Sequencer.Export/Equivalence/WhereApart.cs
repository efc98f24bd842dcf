using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// Where expressions of one builder come apart: of two that are built alike only the parts that are not the same, down to where they are built
/// otherwise. Where those parts have the same values, so have the expressions.
/// </summary>
internal sealed class WhereApart(ExpressionBuilder builder)
{
    private readonly HashSet<(Expression, Expression)> _compared = [];
    private readonly List<Expression> _alike = [];

    /// <summary>For each such place that the two values are the same.</summary>
    public IEnumerable<Expression> Alike => _alike;

    public void Compare(Expression first, Expression second)
    {
        Stack<(Expression First, Expression Second)> open = new([(first, second)]);
        while (open.TryPop(out (Expression First, Expression Second) pair))
        {
            if (pair.First == pair.Second || !_compared.Add(pair))
            {
                continue;
            }

            List<(Expression First, Expression Second)> parts = [.. Parts(pair.First, pair.Second)];
            if (parts.Count == 0 || parts.Exists(part => part.First.Sort != part.Second.Sort))
            {
                _alike.Add(builder.Equal(pair.First, pair.Second));
            }
            else
            {
                parts.ForEach(open.Push);
            }
        }
    }

    /// <summary>What differs in the two, in pairs; none where they are built otherwise.</summary>
    private IEnumerable<(Expression First, Expression Second)> Parts(Expression first, Expression second)
    {
        if (first.Kind != second.Kind || first.Value != second.Value || first.Operands.Length == 0)
        {
            return [];
        }

        Expression[] only = [.. first.Operands.Except(second.Operands)];
        Expression[] other = [.. second.Operands.Except(first.Operands)];
        return first.Kind switch
        {
            ExpressionKind.And when IsLess() => [(builder.And(only), builder.And(other))],
            ExpressionKind.Or when IsLess() => [(builder.Or(only), builder.Or(other))],
            ExpressionKind.And or ExpressionKind.Or => [],
            ExpressionKind.Add or ExpressionKind.Equal => only.Length == 1 && other.Length == 1 ? [(only[0], other[0])] : [],
            _ => first.Operands.Length == second.Operands.Length ? first.Operands.Zip(second.Operands).Where(pair => pair.First != pair.Second) : [],
        };

        bool IsLess() => only.Length < first.Operands.Length;
    }
}
