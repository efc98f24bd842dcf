using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Tests.Satisfiability;

/// <summary>A random formula in clauses, and its satisfiability by trying every assignment.</summary>
internal sealed record RandomFormula(int Variables, List<Literal[]> Clauses)
{
    public static RandomFormula Draw(Random random, int largest)
    {
        int variables = random.Next(1, largest + 1);
        int clauses = random.Next(1, 5 * variables + 2);
        return new RandomFormula(variables, [.. Enumerable.Range(0, clauses).Select(_ => DrawClause(random, variables))]);
    }

    public static Literal[] DrawClause(Random random, int variables) =>
        [.. Enumerable.Range(0, random.Next(1, 5)).Select(_ => Literal.Of(random.Next(variables), random.Next(2) == 0))];

    public bool SatisfiableWith(params IEnumerable<Literal> assumptions)
    {
        Literal[][] all = [.. Clauses, .. assumptions.Select(literal => new[] { literal })];
        return Enumerable.Range(0, 1 << Variables).Any(assignment => all.All(clause => clause.Any(literal => True(literal, assignment))));
    }

    public Solver ToSolver(Budget budget)
    {
        Solver solver = new(budget);
        for (int variable = 0; variable < Variables; variable++)
        {
            solver.NewVariable();
        }

        foreach (Literal[] clause in Clauses)
        {
            solver.AddClause(clause);
        }

        return solver;
    }

    private static bool True(Literal literal, int assignment) => ((assignment >> literal.Variable) & 1) == 1 != literal.IsNegated;
}
