using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>A sum of variables with constant factors, and a constant.</summary>
internal sealed class LinearForm
{
    private LinearForm(SortedDictionary<int, (Expression Variable, long Factor)> terms, long constant)
    {
        Terms = terms;
        Constant = constant;
    }

    /// <summary>By the id of the variable's expression.</summary>
    public SortedDictionary<int, (Expression Variable, long Factor)> Terms { get; }

    public long Constant { get; }

    /// <summary>The difference of two integer expressions, null where one is not linear as it stands.</summary>
    public static LinearForm? Difference(Expression left, Expression right)
    {
        SortedDictionary<int, (Expression, long)> terms = [];
        long constant = 0;
        Stack<(Expression Expression, long Factor)> open = new([(left, 1), (right, -1)]);
        while (open.TryPop(out (Expression Expression, long Factor) next))
        {
            switch (next.Expression.Kind)
            {
                case ExpressionKind.Constant:
                    constant += next.Factor * next.Expression.Value;
                    break;
                case ExpressionKind.Variable:
                    long before = terms.TryGetValue(next.Expression.Id, out (Expression, long Factor) term) ? term.Factor : 0;
                    terms[next.Expression.Id] = (next.Expression, before + next.Factor);
                    break;
                case ExpressionKind.Scale:
                    open.Push((next.Expression.Operands[0], next.Factor * next.Expression.Value));
                    break;
                case ExpressionKind.Add:
                    foreach (Expression operand in next.Expression.Operands)
                    {
                        open.Push((operand, next.Factor));
                    }

                    break;
                default:
                    return null;
            }
        }

        foreach (int id in terms.Where(term => term.Value.Item2 == 0).Select(term => term.Key).ToArray())
        {
            terms.Remove(id);
        }

        return new LinearForm(terms, constant);
    }
}
