using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>Certificates that ask part by part: of a counter and its copy in another form, the copy given by the counter.</summary>
public sealed class PartwiseCertificateTests
{
    private const int Limit = 50;

    [Fact]
    public void An_untouched_certificate_is_accepted_and_discharged()
    {
        string text = Twins().Text;
        CertificateFinding finding = CertificateChecker.Check(Twins().System, Twins().System.Requirements[0], text);
        Assert.Equal(string.Empty, finding.Reason);
        Assert.NotNull(finding.Invariant);
        Assert.Contains("(define-fun |copy| () Int ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("(declare-const |copy| Int)", text, StringComparison.Ordinal);
        Assert.Equal(text, Twins().Text);
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => solver.Discharge(text));
    }

    /// <summary>The copy counts one further, or begins elsewhere, than the invariant says.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 1)]
    public void A_wrong_invariant_is_answered_sat(int further, int begins)
    {
        string text = Twins(further, begins).Text;
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => Assert.Contains("sat", solver.Answers(text)));
    }

    [Fact]
    public void Every_line_that_is_dropped_doubled_or_altered_outside_the_invariant_is_refused()
    {
        (TransitionSystem system, string text) = Twins();
        string[] lines = text.Split('\n');
        for (int index = 0; index < lines.Length - 1; index++)
        {
            Refused(system, [.. lines[..index], .. lines[(index + 1)..]], index);
            Refused(system, [.. lines[..index], lines[index], .. lines[index..]], index);
            if (!lines[index].StartsWith("(define-fun |", StringComparison.Ordinal))
            {
                Refused(system, [.. lines[..index], lines[index].Length == 0 ? ";" : $"{lines[index][..^1]}{(char)(lines[index][^1] ^ 1)}", .. lines[(index + 1)..]], index);
            }
        }
    }

    [Theory]
    [InlineData("(define-fun |copy| () Int ", "(define-fun |count| () Int ", "read or given before")]
    [InlineData("(define-fun |copy| () Int ", "(define-fun |copy| () Bool ", "of sort Bool")]
    [InlineData("(define-fun |copy| () Int ", "(define-fun |copy| () Int (+ 9 ", "inside brackets")]
    [InlineData("(define-fun |#fact", "(define-fun |#fact0", "out of its order")]
    [InlineData("(define-fun |copy| () Int |count|)", "(define-fun |copy| () Int (+ |count| 1000))", "outside its range")]
    [InlineData("(define-fun |copy| () Int |count|)", "(define-fun |copy| () Int |elsewhere|)", "neither a state")]
    [InlineData("(define-fun |copy| () Int |count|)", "(define-fun |copy| () Int |copy|)", "read or given before")]
    public void A_broken_invariant_is_refused_with_a_reason(string original, string tampered, string reason)
    {
        (TransitionSystem system, string text) = Twins();
        Assert.Contains(original, text, StringComparison.Ordinal);
        CertificateFinding finding = CertificateChecker.Check(system, system.Requirements[0], text.Replace(original, tampered, StringComparison.Ordinal));
        Assert.False(finding.IsAccepted);
        Assert.Contains(reason, finding.Reason, StringComparison.Ordinal);
    }

    /// <summary>A mistake of the translation would be in the writer and in the checker; only the interpreter can show it.</summary>
    [Theory]
    [InlineData("(+ |count| 1)", "(+ |count| 2)")]
    [InlineData("(ite |run| ", "(ite (not |run|) ")]
    [InlineData("(= |count| 0)", "(= |count| 1)")]
    [InlineData("(assert (not (= |count| |copy|)))", "(assert (not (<= |copy| |count| (+ |copy| 1) 0)))")]
    public void A_mistranslation_is_seen(string original, string wrong)
    {
        (TransitionSystem system, string text) = Twins();
        Assert.Contains(original, text, StringComparison.Ordinal);
        Assert.Equal(string.Empty, Difference(system, text));
        Assert.NotEqual(string.Empty, Difference(system, text.Replace(original, wrong, StringComparison.Ordinal)));
    }

    [Fact]
    public void Certificates_of_random_systems_are_accepted()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            ExpressionBuilder builder = new();
            TransitionSystem system = RandomSystem.Create(seed, 15, builder);
            Expression[] facts = [.. system.States.Select(state => state.Variable.Sort == Sort.Boolean
                ? builder.Not(builder.Variable(state.Variable)) : builder.LessOrEqual(builder.Variable(state.Variable), builder.Constant(state.Initial)))];
            string text = CertificateWriter.WriteByParts(system, system.Requirements[0], builder.And(facts));
            TransitionSystem anew = RandomSystem.Create(seed, 15);
            Assert.Equal(string.Empty, CertificateChecker.Check(anew, anew.Requirements[0], text).Reason);
        }
    }

    private static string Difference(TransitionSystem system, string text)
    {
        Assert.True(SmtReader.TryRead(text, out ImmutableArray<SmtTerm> commands, out string reason), reason);
        InvariantPartReader reader = new(system);
        Assert.Equal(string.Empty, reader.Read(commands));
        PartwiseText expected = new(system, system.Requirements[0], reader.Parts);
        return new PartwiseLockstep(system, reader, expected.Questions, commands).FirstDifference();
    }

    private static void Refused(TransitionSystem system, string[] lines, int index) => Assert.False(
        CertificateChecker.Check(system, system.Requirements[0], string.Join('\n', lines)).IsAccepted,
        string.Create(CultureInfo.InvariantCulture, $"line {index + 1}: {lines[index]}"));

    private static (TransitionSystem System, string Text) Twins(int further = 0, int begins = 0)
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression run = sketch.Input("run");
        Expression count = sketch.State("count", 0, 100, 0);
        Expression copy = sketch.State("copy", 0, 100, begins);
        Expression full = sketch.State("full");
        sketch.Next(count, builder.IfThenElse(run, builder.Minimum(builder.Add(count, builder.Constant(1L)), builder.Constant((long)Limit)), count));
        Expression on = builder.IfThenElse(builder.Less(copy, builder.Constant((long)Limit)), builder.Minimum(builder.Add(copy, builder.Constant(1L + further)), builder.Constant(100L)), builder.Constant((long)Limit));
        sketch.Next(copy, builder.IfThenElse(builder.Not(run), copy, on));
        sketch.Next(full, builder.LessOrEqual(builder.Constant((long)Limit), count));
        sketch.Require("E1", "the copy counts as the counter does", builder.Equal(count, copy));
        TransitionSystem system = sketch.Create("twins");
        Expression[] facts = [builder.Equal(count, copy), builder.Implies(full, builder.LessOrEqual(builder.Constant((long)Limit), count)), builder.LessOrEqual(count, builder.Constant((long)Limit))];
        return (system, CertificateWriter.WriteByParts(system, system.Requirements[0], builder.And(facts)));
    }
}
