using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>Walks conditions and sums without recursion, however deep they nest.</summary>
public static class ConditionTree
{
    public static ImmutableArray<Condition> Children(Condition condition) => condition switch
    {
        AllOf all => all.Conditions,
        AnyOf any => any.Conditions,
        Negation negation => [negation.Condition],
        EdgeFact edge => [edge.Condition],
        StaysFact stays => [stays.Condition],
        VoteFact vote => [vote.Vote.Fact],
        LingersFact lingers => [lingers.Condition],
        DeadbandFact deadband => [deadband.Raise],
        _ => [],
    };

    /// <summary>The condition and everything below it, in written order.</summary>
    public static IEnumerable<Condition> Parts(Condition root)
    {
        Stack<Condition> open = new([root]);
        while (open.TryPop(out Condition? condition))
        {
            yield return condition;
            ImmutableArray<Condition> children = Children(condition);
            for (int index = children.Length - 1; index >= 0; index--)
            {
                open.Push(children[index]);
            }
        }
    }

    /// <summary>The condition and everything below it, children before their parents.</summary>
    public static IEnumerable<Condition> ChildrenFirst(Condition root)
    {
        Stack<(Condition Condition, bool Opened)> open = new([(root, false)]);
        while (open.TryPop(out (Condition Condition, bool Opened) top))
        {
            if (top.Opened)
            {
                yield return top.Condition;
                continue;
            }

            open.Push((top.Condition, true));
            ImmutableArray<Condition> children = Children(top.Condition);
            for (int index = children.Length - 1; index >= 0; index--)
            {
                open.Push((children[index], false));
            }
        }
    }

    /// <summary>
    /// The facts at the leaves: whether each speaks for the condition (or, under a negation, against it),
    /// and whether a <c>stays</c>, an off-delay, a deadband or an edge stands between.
    /// </summary>
    internal static IEnumerable<SignedFact> Facts(Condition root, bool positive = true)
    {
        Stack<SignedFact> open = new([new SignedFact(root, positive, false)]);
        while (open.TryPop(out SignedFact signed))
        {
            ImmutableArray<Condition> children = Children(signed.Fact);
            if (children.IsEmpty)
            {
                yield return signed;
            }

            for (int index = children.Length - 1; index >= 0; index--)
            {
                open.Push(new SignedFact(
                    children[index],
                    signed.Positive != (signed.Fact is Negation),
                    signed.Timed || signed.Fact is StaysFact or LingersFact or DeadbandFact or EdgeFact));
            }
        }
    }

    /// <summary>The readings, parameters, totals and literals of all comparisons in the condition.</summary>
    public static IEnumerable<Quantity> Amounts(Condition root)
    {
        foreach (Condition part in Parts(root))
        {
            ImmutableArray<Quantity> sums = part switch
            {
                CompareFact compare => [compare.Left, compare.Right],
                WithinFact within => [within.Value, within.Lower, within.Upper],
                _ => [],
            };
            foreach (Quantity amount in sums.SelectMany(Amounts))
            {
                yield return amount;
            }
        }
    }

    public static IEnumerable<Quantity> Amounts(Quantity root)
    {
        Stack<Quantity> open = new([root]);
        while (open.TryPop(out Quantity? quantity))
        {
            if (quantity is SumQuantity sum)
            {
                open.Push(sum.Right);
                open.Push(sum.Left);
            }
            else
            {
                yield return quantity;
            }
        }
    }

    /// <summary>The tags of all inputs that the condition looks at.</summary>
    public static IEnumerable<string> InputTags(Condition root)
    {
        foreach (Condition part in Parts(root))
        {
            if (part is SwitchFact fact)
            {
                yield return fact.Input.Tag;
            }
            else if (part is UsableFact usable)
            {
                yield return usable.Input.Tag;
            }
        }

        foreach (ReadingQuantity reading in Amounts(root).OfType<ReadingQuantity>())
        {
            yield return reading.Input.Tag;
        }
    }

    /// <summary>The tags of all outputs that the condition looks at.</summary>
    public static IEnumerable<string> OutputTags(Condition root) => Parts(root).OfType<OutputFact>().Select(fact => fact.Output.Tag)
        .Concat(Amounts(root).OfType<TotalQuantity>().Select(total => total.Output.Tag));
}
