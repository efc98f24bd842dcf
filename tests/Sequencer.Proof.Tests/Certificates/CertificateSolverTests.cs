using System.Collections.Immutable;
using System.Diagnostics;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;
using Xunit.Sdk;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>Outside solvers have the last word on certificates.</summary>
public sealed class CertificateSolverTests
{
    private static readonly string[] Discharged = ["unsat", "unsat", "unsat"];

    public static TheoryData<string, string> Everything
    {
        get
        {
            TheoryData<string, string> data = [];
            foreach (string name in CertifiedCases.ByName.Keys)
            {
                data.Add(name, "z3");
                data.Add(name, "cvc5");
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void A_right_invariant_is_discharged(string name, string solver) =>
        Assert.Equal(Discharged, Solver(solver).Answers(CertifiedCases.ByName[name]().Certificate));

    [Theory]
    [MemberData(nameof(Everything))]
    public void A_wrong_invariant_is_answered_sat(string name, string solver)
    {
        IReadOnlyList<string> answers = Solver(solver).Answers(CertifiedCases.ByName[name]().WrongCertificate);
        Assert.Equal(3, answers.Count);
        Assert.Contains("sat", answers);
    }

    [Fact]
    public void An_invariant_that_leans_on_an_assumption_fails_without_it()
    {
        CertifiedCase interlock = CertifiedCases.Interlock();
        string alone = CertificateWriter.Write(interlock.System, interlock.Requirement, interlock.Invariant, []);
        Assert.Contains("no assumption was leaned on", alone, StringComparison.Ordinal);
        Assert.Equal(["unsat", "sat", "sat"], SmtSolver.Z3.Answers(alone));
    }

    [Fact]
    public void A_range_that_the_proof_needs_is_proved_with_it()
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression step = sketch.State("rate", 0, 3, 0);
        Expression total = sketch.State("total", 0, 1000, 0);
        Expression wrap = sketch.Input("wrap");
        sketch.Next(step, builder.IfThenElse(wrap, builder.Constant(3L), step));
        Expression sum = builder.Add(total, step);
        sketch.Next(total, builder.IfThenElse(builder.LessOrEqual(sum, builder.Constant(100L)), builder.Minimum(sum, builder.Constant(1000L)), builder.Constant(0L)));
        sketch.Require("H1", "never above 103", builder.LessOrEqual(sum, builder.Constant(103L)));
        TransitionSystem system = sketch.Create("rate");
        string text = CertificateWriter.Write(system, system.Requirements[0], builder.LessOrEqual(total, builder.Constant(100L)));
        Assert.Contains("(<= 0 |rate| 3)", text, StringComparison.Ordinal);
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => Assert.Equal(Discharged, solver.Answers(text)));
        Assert.Contains("sat", SmtSolver.Z3.Answers(text.Replace("(<= 0 |rate| 3)", "true", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_ranges_of_random_systems_are_proved_by_the_solver()
    {
        for (int seed = 0; seed < 25; seed++)
        {
            ExpressionBuilder builder = new();
            TransitionSystem system = RandomSystem.Create(seed, 10, builder);
            Assert.Equal(["unsat", "unsat"], SmtSolver.Z3.Answers(CertificateWriter.Write(system, system.Requirements[0], builder.True)).Take(2));
        }
    }

    [Fact]
    public void A_missing_solver_fails_with_the_command_that_installs_it()
    {
        SmtSolver missing = new("no-such-solver", "z3", []);
        FailException failure = Assert.Throws<FailException>(() => missing.Answers("(check-sat)"));
        Assert.Contains("apt-get install -y z3", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fact_used_in_many_places_does_not_blow_up_the_text()
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression fact = sketch.Input("LSHH101");
        ImmutableArray<Expression> states = [.. Enumerable.Range(0, 200).Select(number => sketch.State(FormattableString.Invariant($"x{number}")))];
        foreach (Expression state in states)
        {
            fact = builder.Equal(fact, builder.Or(state, builder.And(fact, builder.Not(state))));
            sketch.Next(state, fact);
        }

        sketch.Require("H1", "never", builder.Implies(fact, fact));
        TransitionSystem system = sketch.Create("shared");
        string text = CertificateWriter.Write(system, system.Requirements[0], builder.Or(states));
        Assert.InRange(text.Length, 10_000, 100_000);
        Stopwatch watch = Stopwatch.StartNew();
        Assert.True(CertificateChecker.Check(system, system.Requirements[0], text).IsAccepted);
        Assert.Equal(3, SmtSolver.Z3.Answers(text).Count);
        Assert.True(watch.Elapsed < TimeSpan.FromMinutes(1), $"took {watch.Elapsed}");
    }

    private static SmtSolver Solver(string name) => name == "z3" ? SmtSolver.Z3 : SmtSolver.Cvc5;
}
