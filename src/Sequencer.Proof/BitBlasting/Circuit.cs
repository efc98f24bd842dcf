using System.Diagnostics;
using System.Runtime.InteropServices;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>Gates in clauses (Tseitin 1968). Every gate is defined in both directions, so it may be used negated.</summary>
internal sealed class Circuit : FoldedGates
{
    private const double NearestConflicts = 10;

    /// <summary>So many gates count about alike as near.</summary>
    private const double NearGates = 50;

    /// <summary>Of each variable of the solver the operands of the gate that it is the output of. The first variable, the constant, stands for none.</summary>
    private readonly List<(Literal First, Literal Second, Literal Third)> _operands = [];

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

    /// <summary>
    /// Tells the solver that the next question is about this literal: what it is made of is guessed first, the nearest before the others, the rest hardly ever. Worth the walk where
    /// many questions are asked of one large circuit.
    /// </summary>
    public void Prefer(Literal literal)
    {
        HashSet<int> met = [True.Variable];
        Queue<int> open = new([literal.Variable]);
        while (open.TryDequeue(out int variable))
        {
            if (!met.Add(variable))
            {
                continue;
            }

            Solver.Prefer(variable, NearestConflicts / (1 + (met.Count / NearGates)));
            if (variable < _operands.Count)
            {
                (Literal first, Literal second, Literal third) = _operands[variable];
                open.Enqueue(first.Variable);
                open.Enqueue(second.Variable);
                open.Enqueue(third.Variable);
            }
        }
    }

    protected override Literal Define(Gate gate, Literal first, Literal second, Literal third)
    {
        Literal output = Solver.NewDependent();
        CollectionsMarshal.SetCount(_operands, output.Variable + 1);
        _operands[output.Variable] = (first, second, third);
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
