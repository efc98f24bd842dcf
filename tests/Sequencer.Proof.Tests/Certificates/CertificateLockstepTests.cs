using System.Collections.Immutable;
using Sequencer.Proof.Certificates;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>A mistake of the translation would be in the writer and in the checker; only the interpreter can show it.</summary>
public sealed class CertificateLockstepTests
{
    [Theory]
    [InlineData("timer", "(< |R101.step10.clock| 100000)", "(<= |R101.step10.clock| 100000)")]
    [InlineData("timer", "(+ |R101.step10.clock| 1)", "(+ |R101.step10.clock| 2)")]
    [InlineData("timer", "(ite |R101.hold| ", "(ite (not |R101.hold|) ")]
    [InlineData("timer", "(define-fun |#required| () Bool (<= ", "(define-fun |#required| () Bool (< ")]
    [InlineData("timer", "(define-fun |#found| () Bool (<= ", "(define-fun |#found| () Bool (< ")]
    [InlineData("latch", "(define-fun |T1.trips| () Bool (or ", "(define-fun |T1.trips| () Bool (and ")]
    [InlineData("latch", "(= |T1.latched| false)", "(= |T1.latched| true)")]
    [InlineData("interlock", "(define-fun |#assumption1| () Bool (not ", "(define-fun |#assumption1| () Bool (and true ")]
    [InlineData("counter", "(+ ", "(* 2 ")]
    public void A_mistranslation_is_seen(string name, string original, string wrong)
    {
        CertifiedCase certified = CertifiedCases.ByName[name]();
        Assert.Contains(original, certified.Certificate, StringComparison.Ordinal);
        Assert.Equal(string.Empty, Difference(certified, certified.Certificate));
        Assert.NotEqual(string.Empty, Difference(certified, certified.Certificate.Replace(original, wrong, StringComparison.Ordinal)));
    }

    private static string Difference(CertifiedCase certified, string text)
    {
        Assert.True(SmtReader.TryRead(text, out ImmutableArray<SmtTerm> commands, out string reason), reason);
        return new CertificateLockstep(
            certified.System, certified.Requirement, certified.System.Assumptions, certified.Invariant, commands).FirstDifference();
    }
}
