using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>
/// Gates in clauses (Tseitin 1968), each made only once: equal gates are the same literal.
/// Constants are folded; every gate is defined in both directions, so it may be used negated.
/// </summary>
internal sealed class Circuit
{
    private readonly Dictionary<(Gate, int, int, int), Literal> _known = [];

    public Circuit(Solver solver)
    {
        Solver = solver;
        True = solver.NewVariable();
        solver.AddClause(True);
    }

    private enum Gate
    {
        And,
        ExclusiveOr,
        Choice,
        Majority,
    }

    public Solver Solver { get; }

    public Literal True { get; }

    public Literal False => !True;

    public Literal Constant(bool value) => value ? True : False;

    public Literal And(Literal left, Literal right)
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
        return Make(Gate.And, left, right, default, output =>
        {
            Solver.AddClause(!output, left);
            Solver.AddClause(!output, right);
            Solver.AddClause(output, !left, !right);
        });
    }

    public Literal Or(Literal left, Literal right) => !And(!left, !right);

    /// <summary>The conjunction as a balanced tree over the operands in the order of their codes.</summary>
    public Literal And(IEnumerable<Literal> operands)
    {
        List<Literal> layer = [.. operands.Distinct().OrderBy(literal => literal.Code)];
        while (layer.Count > 1)
        {
            List<Literal> next = [];
            for (int index = 0; index < layer.Count; index += 2)
            {
                next.Add(index + 1 < layer.Count ? And(layer[index], layer[index + 1]) : layer[index]);
            }

            layer = next;
        }

        return layer.Count == 0 ? True : layer[0];
    }

    public Literal Or(IEnumerable<Literal> operands) => !And(operands.Select(literal => !literal));

    public Literal ExclusiveOr(Literal left, Literal right)
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

        return Make(Gate.ExclusiveOr, left, right, default, output =>
        {
            Solver.AddClause(!output, left, right);
            Solver.AddClause(!output, !left, !right);
            Solver.AddClause(output, !left, right);
            Solver.AddClause(output, left, !right);
        }).NegatedIf(negate);
    }

    public Literal Choice(Literal condition, Literal then, Literal otherwise)
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

        return Make(Gate.Choice, condition, then, otherwise, output =>
        {
            Solver.AddClause(!condition, !then, output);
            Solver.AddClause(!condition, then, !output);
            Solver.AddClause(condition, !otherwise, output);
            Solver.AddClause(condition, otherwise, !output);
            Solver.AddClause(!then, !otherwise, output);
            Solver.AddClause(then, otherwise, !output);
        });
    }

    /// <summary>Whether two or three of three hold: the carry of an adder.</summary>
    public Literal Majority(Literal first, Literal second, Literal third)
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

        return Make(Gate.Majority, a, b, c, output =>
        {
            Solver.AddClause(!a, !b, output);
            Solver.AddClause(!a, !c, output);
            Solver.AddClause(!b, !c, output);
            Solver.AddClause(a, b, !output);
            Solver.AddClause(a, c, !output);
            Solver.AddClause(b, c, !output);
        });
    }

    public bool IsConstant(Literal literal) => literal.Variable == True.Variable;

    private static Literal Plain(Literal literal) => literal.NegatedIf(literal.IsNegated);

    private static (Literal, Literal) Ordered(Literal left, Literal right) => left.Code <= right.Code ? (left, right) : (right, left);

    private Literal Make(Gate gate, Literal first, Literal second, Literal third, Action<Literal> define)
    {
        (Gate, int, int, int) key = (gate, first.Code, second.Code, third.Code);
        if (!_known.TryGetValue(key, out Literal output))
        {
            output = Solver.NewDependent();
            _known.Add(key, output);
            define(output);
        }

        return output;
    }
}
