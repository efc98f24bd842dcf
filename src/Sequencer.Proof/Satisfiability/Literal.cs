namespace Sequencer.Proof.Satisfiability;

/// <summary>A propositional variable or its negation, packed as twice the variable plus one if negated.</summary>
internal readonly record struct Literal(int Code)
{
    public int Variable => Code >> 1;

    public bool IsNegated => (Code & 1) != 0;

    public static Literal Of(int variable, bool negated = false) => new((variable << 1) | (negated ? 1 : 0));

    public static Literal operator !(Literal literal) => new(literal.Code ^ 1);

    /// <summary>The literal itself, or its negation where <paramref name="negate"/> asks for it.</summary>
    public Literal NegatedIf(bool negate) => negate ? !this : this;

    public override string ToString() => FormattableString.Invariant($"{(IsNegated ? "-" : "")}{Variable}");
}
