using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Certificates;

public sealed class CertificateCheckerTests
{
    public static TheoryData<string> Names => [.. CertifiedCases.ByName.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void An_untouched_certificate_is_accepted_by_the_system_made_anew(string name)
    {
        CertifiedCase written = CertifiedCases.ByName[name]();
        CertifiedCase anew = CertifiedCases.ByName[name]();
        CertificateFinding finding = CertificateChecker.Check(anew.System, anew.Requirement, written.Certificate);
        Assert.Equal(string.Empty, finding.Reason);
        Assert.NotNull(finding.Invariant);
        Assert.Equal(anew.System.Assumptions.AsEnumerable(), finding.LeanedOn);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_same_verdict_gives_the_same_bytes(string name) =>
        Assert.Equal(CertifiedCases.ByName[name]().Certificate, CertifiedCases.ByName[name]().Certificate);

    [Fact]
    public void The_example_in_the_specification_is_what_the_writer_writes()
    {
        string page = File.ReadAllText(RepositoryPath.At("spec", "certificates.md"));
        string example = page.Split("```smt2\n")[1].Split("```")[0];
        Assert.Equal(CertifiedCases.Interlock().Certificate, example);
    }

    [Fact]
    public void What_the_requirement_does_not_depend_on_is_left_out()
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression near = sketch.State("near");
        Expression read = sketch.State("read");
        Expression far = sketch.State("far", 0, 9, 0);
        Expression other = sketch.Input("other", 0, 9);
        sketch.Next(near, builder.And(near, read));
        sketch.Next(read, builder.Less(far, other));
        sketch.Next(far, other);
        sketch.Require("H1", "never near", builder.Not(near));
        TransitionSystem system = sketch.Create("cone");
        string text = CertificateWriter.Write(system, system.Requirements[0], builder.Not(near));
        Assert.Contains("(declare-const |read| Bool)", text, StringComparison.Ordinal);
        Assert.DoesNotContain("|read'|", text, StringComparison.Ordinal);
        Assert.DoesNotContain("|far|", text, StringComparison.Ordinal);
        Assert.DoesNotContain("|other|", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_line_that_is_dropped_doubled_or_altered_outside_the_invariant_is_refused(string name)
    {
        CertifiedCase anew = CertifiedCases.ByName[name]();
        string[] lines = anew.Certificate.Split('\n');
        for (int index = 0; index < lines.Length - 1; index++)
        {
            Refused(anew, [.. lines[..index], .. lines[(index + 1)..]], index, "dropped");
            Refused(anew, [.. lines[..index], lines[index], .. lines[index..]], index, "doubled");
            Refused(anew, [.. lines[..index], $"{lines[index]} ", .. lines[(index + 1)..]], index, "lengthened");
            if (!lines[index].StartsWith("(define-fun |#found|", StringComparison.Ordinal))
            {
                Refused(anew, [.. lines[..index], Altered(lines[index]), .. lines[(index + 1)..]], index, "altered");
            }
        }
    }

    [Theory]
    [InlineData("(assert (<= (- 50) |LT101| 6000))", "(assert (<= 7000 |LT101| 6000))", "inputs")]
    [InlineData("(declare-const |P201.last| Bool)", "(define-fun |P201.last| () Bool false)", "states")]
    [InlineData("(define-fun |P201.last'| () Bool |P201|)", "(define-fun |P201.last'| () Bool false)", "next values")]
    [InlineData("(define-fun |#assumed| () Bool |#assumption1|)", "(define-fun |#assumed| () Bool false)", "assumptions")]
    [InlineData("(define-fun |#required| () Bool (not (and ", "(define-fun |#required| () Bool (not (and false ", "requirement")]
    [InlineData("(define-fun |#invariant| () Bool (and |#ranges| |#found|))", "(define-fun |#invariant| () Bool false)", "whole invariant")]
    [InlineData("(assert (not |#invariant'|))", "(assert (not |#invariant|))", "obligations")]
    [InlineData("; in words: never P201 and P202", "; in words: never P201 or P202", "header")]
    [InlineData("(set-logic QF_LIA)", "(set-logic ALL)", "logic")]
    [InlineData("(not (and |P201.last| |P202.last|))", "(not |P201.manual.demand|)", "neither a state")]
    [InlineData("(not (and |P201.last| |P202.last|))", "(not |#found'|)", "neither a state")]
    [InlineData("(not (and |P201.last| |P202.last|))", "(<= |P201.last| 0)", "wrong sort")]
    [InlineData("(not (and |P201.last| |P202.last|))", "(and |P201.last|)", "wrong sort or number")]
    [InlineData("(not (and |P201.last| |P202.last|))", "(xor |P201.last| |P202.last|)", "`xor`")]
    [InlineData("(not (and |P201.last| |P202.last|))", "7", "of sort Bool")]
    [InlineData("(not (and |P201.last| |P202.last|))", "((not true))", "no operator")]
    [InlineData("(not (and |P201.last| |P202.last|))", "(< 0 (* 9223372036854775807 9))", "64 bits")]
    [InlineData("(not (and |P201.last| |P202.last|))", "(not \"x\")", "U+0022")]
    [InlineData("|#found| () Bool", "|#inv2| () Bool", "out of its order")]
    [InlineData("|#found| () Bool", "|other| () Bool", "no invariant")]
    [InlineData("; assumption leaned on: A1", "; assumption leaned on: A9", "A9")]
    [InlineData("(pop 1)", "(pop 1", "inside brackets")]
    [InlineData("(pop 1)", "(pop 1))", "not opened")]
    public void A_weakened_or_broken_text_is_refused_with_a_reason(string original, string tampered, string reason)
    {
        CertifiedCase interlock = CertifiedCases.Interlock();
        Assert.Contains(original, interlock.Certificate, StringComparison.Ordinal);
        CertificateFinding finding = CertificateChecker.Check(
            interlock.System, interlock.Requirement, interlock.Certificate.Replace(original, tampered, StringComparison.Ordinal));
        Assert.False(finding.IsAccepted);
        Assert.Contains(reason, finding.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_program_refuses_the_certificate()
    {
        string certificate = CertifiedCases.Counter().Certificate;
        CertifiedCase timer = CertifiedCases.Timer();
        Assert.False(CertificateChecker.Check(timer.System, timer.Requirement, certificate).IsAccepted);
    }

    [Fact]
    public void Fewer_assumptions_are_a_stronger_claim_and_accepted()
    {
        CertifiedCase interlock = CertifiedCases.Interlock();
        string text = CertificateWriter.Write(interlock.System, interlock.Requirement, interlock.Invariant, []);
        CertificateFinding finding = CertificateChecker.Check(interlock.System, interlock.Requirement, text);
        Assert.True(finding.IsAccepted, finding.Reason);
        Assert.Empty(finding.LeanedOn);
    }

    [Fact]
    public void Deep_brackets_are_refused_and_not_walked_into()
    {
        CertifiedCase latch = CertifiedCases.Latch();
        string deep = new('(', 5_000_000);
        Assert.Contains("brackets", CertificateChecker.Check(latch.System, latch.Requirement, deep).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Certificates_of_random_systems_and_invariants_are_accepted()
    {
        for (int seed = 0; seed < 50; seed++)
        {
            ExpressionBuilder builder = new();
            TransitionSystem system = RandomSystem.Create(seed, 15, builder);
            Random random = new(seed);
            Expression invariant = StateFact(system, builder, random);
            string text = CertificateWriter.Write(system, system.Requirements[0], invariant);
            TransitionSystem anew = RandomSystem.Create(seed, 15);
            Assert.Equal(string.Empty, CertificateChecker.Check(anew, anew.Requirements[0], text).Reason);
        }
    }

    [Fact]
    public void Words_of_people_cannot_leave_their_comment()
    {
        SystemSketch sketch = new();
        Expression state = sketch.State("x");
        sketch.Require("H1", "never x\n(assert false)\r(assert false)", sketch.Builder.Not(state));
        TransitionSystem system = sketch.Create("words");
        string text = CertificateWriter.Write(system, system.Requirements[0], sketch.Builder.Not(state));
        Assert.Contains("; in words: never x (assert false) (assert false)\n", text, StringComparison.Ordinal);
        Assert.True(CertificateChecker.Check(system, system.Requirements[0], text).IsAccepted);
    }

    /// <summary>A random Boolean over states: random facts with inputs put to constants.</summary>
    private static Expression StateFact(TransitionSystem system, ExpressionBuilder builder, Random random)
    {
        Dictionary<Variable, Expression> constants = system.Inputs.ToDictionary(
            static input => input,
            input => input.Sort == Sort.Boolean ? builder.Constant(random.Next(2) == 0) : builder.Constant(random.NextInt64(input.Range.Minimum, input.Range.Maximum + 1)));
        return builder.Or(builder.Substitute([.. system.Requirements.Select(requirement => requirement.Holds), .. system.Definitions.Select(definition => definition.Value)], constants));
    }

    private static void Refused(CertifiedCase anew, string[] lines, int index, string change)
    {
        CertificateFinding finding = CertificateChecker.Check(anew.System, anew.Requirement, string.Join('\n', lines));
        Assert.False(finding.IsAccepted, string.Create(CultureInfo.InvariantCulture, $"line {index + 1} {change}: {lines[index]}"));
        Assert.NotEqual(string.Empty, finding.Reason);
    }

    private static string Altered(string line)
    {
        if (line.Length == 0)
        {
            return "; ";
        }

        return line.Contains("true", StringComparison.Ordinal) ? line.Replace("true", "false", StringComparison.Ordinal) : $"{line[..^1]}{(char)(line[^1] ^ 1)}";
    }
}
