using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>Gates whose outputs are diagrams: a literal is an edge. Unknown bits take the places given, one after another.</summary>
internal sealed class DiagramGates(Diagrams diagrams, IReadOnlyList<int> levels) : Gates
{
    private int _taken;

    public override Literal True => new(Diagrams.True);

    /// <summary>The conjunction of what was demanded so far.</summary>
    public int Demanded { get; set; } = Diagrams.True;

    public override Literal NewVariable() => new(diagrams.Variable(levels[_taken++]));

    public override void Demand(Literal literal) => Demanded = diagrams.And(Demanded, literal.Code);

    public override Literal And(Literal left, Literal right) => new(diagrams.And(left.Code, right.Code));

    public override Literal ExclusiveOr(Literal left, Literal right) => new(diagrams.ExclusiveOr(left.Code, right.Code));

    public override Literal Choice(Literal condition, Literal then, Literal otherwise) =>
        new(diagrams.Choice(condition.Code, then.Code, otherwise.Code));

    public override Literal Majority(Literal first, Literal second, Literal third) =>
        new(diagrams.Choice(first.Code, diagrams.Or(second.Code, third.Code), diagrams.And(second.Code, third.Code)));
}
