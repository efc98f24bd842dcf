using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>Gates that are only listed, with what each reads: who depends on whom, bit by bit.</summary>
internal sealed class GateList : FoldedGates
{
    private readonly List<int[]> _links = [];

    public GateList()
    {
        True = NewVariable();
    }

    public override Literal True { get; }

    /// <summary>Bits, gates and the constant.</summary>
    public int Count { get; private set; }

    /// <summary>Each gate together with what it reads.</summary>
    public IReadOnlyList<int[]> Links => _links;

    public override Literal NewVariable() => Literal.Of(Count++);

    public override void Demand(Literal literal)
    {
    }

    /// <summary>Says that two belong together although no gate reads them.</summary>
    public void Link(Literal first, Literal second)
    {
        if (!IsConstant(first) && !IsConstant(second) && first.Variable != second.Variable)
        {
            _links.Add([first.Variable, second.Variable]);
        }
    }

    protected override Literal Define(Gate gate, Literal first, Literal second, Literal third)
    {
        Literal output = NewVariable();
        _links.Add(gate is Gate.And or Gate.ExclusiveOr
            ? [output.Variable, first.Variable, second.Variable]
            : [output.Variable, first.Variable, second.Variable, third.Variable]);
        return output;
    }
}
