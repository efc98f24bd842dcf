using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>Gates that are each made only once, so that equal gates are the same literal; constants are folded.</summary>
internal abstract class FoldedGates : Gates
{
    private readonly Dictionary<(Gate, int, int, int), Literal> _known = [];

    protected enum Gate
    {
        And,
        ExclusiveOr,
        Choice,
        Majority,
    }

    public override Literal And(Literal left, Literal right)
    {
        if (left == False || right == False || left == !right)
        {
            return False;
        }

        if (left == True || left == right)
        {
            return right;
        }

        if (right == True)
        {
            return left;
        }

        (left, right) = Ordered(left, right);
        return Make(Gate.And, left, right, default);
    }

    public override Literal ExclusiveOr(Literal left, Literal right)
    {
        if (IsConstant(left))
        {
            return right.NegatedIf(left == True);
        }

        if (IsConstant(right))
        {
            return left.NegatedIf(right == True);
        }

        bool negate = left.IsNegated != right.IsNegated;
        (left, right) = Ordered(Plain(left), Plain(right));
        if (left == right)
        {
            return Constant(negate);
        }

        return Make(Gate.ExclusiveOr, left, right, default).NegatedIf(negate);
    }

    public override Literal Choice(Literal condition, Literal then, Literal otherwise)
    {
        if (IsConstant(condition) || then == otherwise)
        {
            return condition == False ? otherwise : then;
        }

        if (IsConstant(then) || then == condition || then == !condition)
        {
            return then == True || then == condition ? Or(condition, otherwise) : And(!condition, otherwise);
        }

        if (IsConstant(otherwise) || otherwise == condition || otherwise == !condition)
        {
            return otherwise == False || otherwise == condition ? And(condition, then) : Or(!condition, then);
        }

        if (then == !otherwise)
        {
            return ExclusiveOr(condition, otherwise);
        }

        if (condition.IsNegated)
        {
            (condition, then, otherwise) = (!condition, otherwise, then);
        }

        return Make(Gate.Choice, condition, then, otherwise);
    }

    public override Literal Majority(Literal first, Literal second, Literal third)
    {
        Literal[] sorted = [first, second, third];
        Array.Sort(sorted, static (left, right) => left.Code.CompareTo(right.Code));
        (Literal a, Literal b, Literal c) = (sorted[0], sorted[1], sorted[2]);
        if (IsConstant(a))
        {
            return a == True ? Or(b, c) : And(b, c);
        }

        if (a.Variable == b.Variable)
        {
            return a == b ? a : c;
        }

        if (b.Variable == c.Variable)
        {
            return b == c ? b : a;
        }

        return Make(Gate.Majority, a, b, c);
    }

    private static Literal Plain(Literal literal) => literal.NegatedIf(literal.IsNegated);

    private static (Literal, Literal) Ordered(Literal left, Literal right) => left.Code <= right.Code ? (left, right) : (right, left);

    /// <summary>A new gate. Operands are no constants; those of commutative gates are in the order of their codes.</summary>
    protected abstract Literal Define(Gate gate, Literal first, Literal second, Literal third);

    private Literal Make(Gate gate, Literal first, Literal second, Literal third)
    {
        (Gate, int, int, int) key = (gate, first.Code, second.Code, third.Code);
        if (!_known.TryGetValue(key, out Literal output))
        {
            output = Define(gate, first, second, third);
            _known.Add(key, output);
        }

        return output;
    }
}
