using System.Diagnostics;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>Gates in clauses (Tseitin 1968). Every gate is defined in both directions, so it may be used negated.</summary>
internal sealed class Circuit : FoldedGates
{
    public Circuit(Solver solver)
    {
        Solver = solver;
        True = solver.NewVariable();
        solver.AddClause(True);
    }

    public Solver Solver { get; }

    public override Literal True { get; }

    public override Literal NewVariable() => Solver.NewVariable();

    public override void Demand(Literal literal) => Solver.AddClause(literal);

    protected override Literal Define(Gate gate, Literal first, Literal second, Literal third)
    {
        Literal output = Solver.NewDependent();
        switch (gate)
        {
            case Gate.And:
                Solver.AddClause(!output, first);
                Solver.AddClause(!output, second);
                Solver.AddClause(output, !first, !second);
                break;
            case Gate.ExclusiveOr:
                Solver.AddClause(!output, first, second);
                Solver.AddClause(!output, !first, !second);
                Solver.AddClause(output, !first, second);
                Solver.AddClause(output, first, !second);
                break;
            case Gate.Choice:
                Solver.AddClause(!first, !second, output);
                Solver.AddClause(!first, second, !output);
                Solver.AddClause(first, !third, output);
                Solver.AddClause(first, third, !output);
                Solver.AddClause(!second, !third, output);
                Solver.AddClause(second, third, !output);
                break;
            case Gate.Majority:
                Solver.AddClause(!first, !second, output);
                Solver.AddClause(!first, !third, output);
                Solver.AddClause(!second, !third, output);
                Solver.AddClause(first, second, !output);
                Solver.AddClause(first, third, !output);
                Solver.AddClause(second, third, !output);
                break;
            default:
                throw new UnreachableException($"no clauses of {gate}");
        }

        return output;
    }
}
