using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Obligations;

/// <summary>What every unit owes: all of it is asked, holds with a certificate that is accepted, and fails where the lowering is put out of order.</summary>
public sealed class StandardObligationTests
{
    private static readonly string[] Owed =
    [
        "U.rest", "U.held", "U.power", "U.T1.acts", "U.holding.ends", "U.restarting.ends", "U.stopping.ends", "U.aborting.ends", "U.way_back",
        "U.step10.ends", "U.step20.ends", "U.step30.ends", "U.step910.ends", "U.step911.ends", "U.step920.ends", "U.P1.maximum", "U.P1.P2.apart", "U.memory",
    ];

    public static TheoryData<string> Names => [.. Owed];

    [Fact]
    public void Every_obligation_of_the_page_is_asked_of_a_unit_and_nothing_else() => Assert.Equal(
        Owed.Order(StringComparer.Ordinal),
        OwedProgram.System.Requirements.Where(requirement => requirement.Obligation is not null).Select(requirement => requirement.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_obligation_has_a_line_on_the_page()
    {
        string page = File.ReadAllText(Path.Combine(RepositoryPath.Root, "spec", "obligations.md"));
        Assert.All(OwedProgram.System.Requirements.Select(requirement => requirement.Obligation).OfType<StandardObligation>(), owed => Assert.Contains(owed.Words, page, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void It_holds_with_a_certificate_that_is_accepted(string name)
    {
        Holds holds = Assert.IsType<Holds>(Decide(OwedProgram.System, name));
        string certificate = CertificateWriter.Write(OwedProgram.System, OwedProgram.Requirement(name), holds.Invariant);
        Assert.True(CertificateChecker.Check(OwedProgram.System, OwedProgram.Requirement(name), certificate).IsAccepted);
    }

    [Theory]
    [InlineData("U.step10.ends", "U.step10.clock", 202)]
    [InlineData("U.step910.ends", "U.step910.clock", 53)]
    [InlineData("U.aborting.ends", "U.step920.clock", 43)]
    public void It_fails_where_a_clock_does_not_count(string name, string stuck, long scans)
    {
        Fails fails = Assert.IsType<Fails>(Decide(OwedProgram.WithStuck(stuck), name));
        Assert.InRange(fails.Trace.Scans, scans, scans + 5);
    }

    private static Verdict Decide(TransitionSystem system, string name) =>
        Prover.Decide(system, system.Requirements.Single(requirement => requirement.Name == name), ProofOptions.Default, null, CancellationToken.None);
}
