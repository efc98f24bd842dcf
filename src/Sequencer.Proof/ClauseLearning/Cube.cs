using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>
/// A set of states: the conjunction of facts or their negations, as literals over the numbers of the
/// <see cref="FactTable"/>, sorted. Blocking it is learning the clause of the opposite literals.
/// </summary>
internal sealed class Cube
{
    private readonly ulong _signature;

    public Cube(IEnumerable<Literal> literals)
    {
        Literals = [.. literals.OrderBy(literal => literal.Code)];
        foreach (Literal literal in Literals)
        {
            _signature |= 1UL << (literal.Code & 63);
        }
    }

    public Literal[] Literals { get; }

    /// <summary>Whether every state of the other is one of this.</summary>
    public bool Covers(Cube other)
    {
        if (Literals.Length > other.Literals.Length || (_signature & ~other._signature) != 0)
        {
            return false;
        }

        int place = 0;
        foreach (Literal literal in Literals)
        {
            while (place < other.Literals.Length && other.Literals[place].Code < literal.Code)
            {
                place++;
            }

            if (place == other.Literals.Length || other.Literals[place] != literal)
            {
                return false;
            }
        }

        return true;
    }

    public override string ToString() => string.Join(' ', Literals);
}
