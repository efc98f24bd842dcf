using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>
/// What expressions of a scan are built from, bit by bit. What a literal stands for is the maker's own affair:
/// a variable of a solver that clauses define, or a decision diagram. Negation costs nothing in each.
/// </summary>
internal abstract class Gates
{
    public abstract Literal True { get; }

    public Literal False => !True;

    public Literal Constant(bool value) => value ? True : False;

    public bool IsConstant(Literal literal) => literal.Variable == True.Variable;

    /// <summary>A new unknown bit.</summary>
    public abstract Literal NewVariable();

    /// <summary>Restricts the unknown bits to those values for which this holds.</summary>
    public abstract void Demand(Literal literal);

    public abstract Literal And(Literal left, Literal right);

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

    public abstract Literal ExclusiveOr(Literal left, Literal right);

    public abstract Literal Choice(Literal condition, Literal then, Literal otherwise);

    /// <summary>Whether two or three of three hold: the carry of an adder.</summary>
    public abstract Literal Majority(Literal first, Literal second, Literal third);
}
