using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Tests.Satisfiability;

public sealed class SolverTests
{
    [Fact]
    public void Thousands_of_small_formulas_are_decided_as_by_trying_every_assignment()
    {
        Random random = new(20260101);
        int satisfiable = 0;
        for (int round = 0; round < 4000; round++)
        {
            RandomFormula formula = RandomFormula.Draw(random, 9);
            Solver solver = formula.ToSolver(Unlimited());
            bool expected = formula.SatisfiableWith();
            Assert.Equal(expected, solver.Solve());
            satisfiable += expected ? 1 : 0;
            if (expected)
            {
                Assert.All(formula.Clauses, clause => Assert.Contains(clause, solver.ModelValue));
            }
        }

        Assert.InRange(satisfiable, 400, 3600);
    }

    [Fact]
    public void Cores_suffice_for_unsatisfiability_and_hold_only_assumptions_while_clauses_are_added()
    {
        Random random = new(7);
        for (int round = 0; round < 1000; round++)
        {
            RandomFormula formula = RandomFormula.Draw(random, 9);
            Solver solver = formula.ToSolver(Unlimited());
            for (int query = 0; query < 5; query++)
            {
                Literal[] assumptions = [.. RandomFormula.DrawClause(random, formula.Variables)];
                bool expected = formula.SatisfiableWith(assumptions);
                Assert.Equal(expected, solver.Solve(assumptions));
                if (!expected)
                {
                    Assert.Subset(assumptions.ToHashSet(), solver.Core.ToHashSet());
                    Assert.False(formula.SatisfiableWith(solver.Core));
                }

                Literal[] clause = RandomFormula.DrawClause(random, formula.Variables);
                formula.Clauses.Add(clause);
                solver.AddClause(clause);
            }
        }
    }

    [Fact]
    public void What_is_kept_from_one_query_to_the_next_changes_no_answer()
    {
        Random random = new(11);
        int satisfiable = 0;
        for (int round = 0; round < 1500; round++)
        {
            RandomFormula formula = RandomFormula.Draw(random, 8);
            Solver solver = formula.ToSolver(Unlimited());
            List<Literal> assumptions = [];
            for (int query = 0; query < 12; query++)
            {
                assumptions = [.. assumptions.SkipLast(random.Next(4))];
                assumptions.AddRange(RandomFormula.DrawClause(random, formula.Variables).Take(2));
                Literal[] guarded = RandomFormula.DrawClause(random, formula.Variables);
                Literal guard = solver.NewDependent();
                solver.AddClause([!guard, .. guarded]);
                bool expected = (formula with { Clauses = [.. formula.Clauses, guarded] }).SatisfiableWith(assumptions);
                Assert.Equal(expected, solver.Solve([.. assumptions, guard]));
                satisfiable += expected ? 1 : 0;
                if (expected)
                {
                    Assert.All([.. formula.Clauses, guarded, .. assumptions.Select(one => new[] { one })], clause => Assert.Contains(clause, solver.ModelValue));
                }

                solver.Retire(guard);
                if (random.Next(3) == 0)
                {
                    Literal[] clause = RandomFormula.DrawClause(random, formula.Variables);
                    formula.Clauses.Add(clause);
                    solver.AddClause(clause);
                }
            }
        }

        Assert.InRange(satisfiable, 1500, 15000);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(7)]
    public void One_pigeon_too_many_does_not_fit_its_holes(int holes)
    {
        Solver solver = new(Unlimited());
        Literal[][] sits = [.. Enumerable.Range(0, holes + 1).Select(_ => Enumerable.Range(0, holes).Select(_ => solver.NewVariable()).ToArray())];
        Array.ForEach(sits, pigeon => solver.AddClause(pigeon));
        for (int first = 0; first <= holes; first++)
        {
            for (int second = 0; second < first; second++)
            {
                for (int hole = 0; hole < holes; hole++)
                {
                    solver.AddClause(!sits[first][hole], !sits[second][hole]);
                }
            }
        }

        Assert.True(solver.Solve(!sits[0][0], sits[1][0]) is false);
        Assert.False(solver.Solve());
    }

    [Fact]
    public void Hard_random_formulas_have_models_that_satisfy_them_or_are_refuted_the_same_way_twice()
    {
        Random random = new(3);
        for (int round = 0; round < 12; round++)
        {
            const int variables = 120;
            List<Literal[]> clauses = [.. Enumerable.Range(0, (int)(4.26 * variables)).Select(_ => Triple(random, variables))];
            RandomFormula formula = new(variables, clauses);
            Budget first = Unlimited();
            Budget second = Unlimited();
            Solver solver = formula.ToSolver(first);
            bool satisfiable = solver.Solve();
            Assert.Equal(satisfiable, formula.ToSolver(second).Solve());
            Assert.Equal(first.Conflicts, second.Conflicts);
            if (satisfiable)
            {
                Assert.All(clauses, clause => Assert.Contains(clause, solver.ModelValue));
            }
        }
    }

    [Fact]
    public void A_spent_budget_and_a_cancelled_token_end_the_search()
    {
        Random random = new(5);
        RandomFormula formula = new(250, [.. Enumerable.Range(0, 1065).Select(_ => Triple(random, 250))]);
        Assert.Throws<BudgetSpentException>(() => formula.ToSolver(new Budget(10, CancellationToken.None)).Solve());
        Assert.ThrowsAny<OperationCanceledException>(() => formula.ToSolver(new Budget(10, new CancellationToken(true))).Solve());
    }

    private static Literal[] Triple(Random random, int variables) =>
        [.. Enumerable.Range(0, 3).Select(_ => Literal.Of(random.Next(variables), random.Next(2) == 0))];

    private static Budget Unlimited() => new(long.MaxValue, CancellationToken.None);
}
