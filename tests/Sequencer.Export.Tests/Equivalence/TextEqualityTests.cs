using Sequencer.Export.Equivalence;
using Sequencer.Proof;
using Sequencer.Testing;

namespace Sequencer.Export.Tests.Equivalence;

public sealed class TextEqualityTests
{
    [Theory]
    [InlineData("one-pit", "pit.seq")]
    [InlineData("marlpit-wharf", "reaction.seq")]
    public void The_exported_text_is_proved_equal_and_solvers_agree(string folder, string file)
    {
        DemoExport site = new(folder, file);
        EqualityResult result = site.Decide(site.Export.Text, ProofOptions.Default);
        ProvedEqual proved = Assert.IsType<ProvedEqual>(result, exactMatch: false);
        Assert.True(proved.Compared >= site.System.Outputs.Length + site.System.Alarms.Length, $"only {proved.Compared} are compared");
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => solver.Discharge(proved.Certificate));
    }

    [Theory]
    [InlineData("one-pit", "pit.seq")]
    [InlineData("marlpit-wharf", "reaction.seq")]
    public void The_text_is_proved_equal_without_its_comments(string folder, string file)
    {
        DemoExport site = new(folder, file);
        Assert.DoesNotContain("(*", site.WithoutComments, StringComparison.Ordinal);
        Assert.IsType<ProvedEqual>(site.Decide(site.WithoutComments, ProofOptions.Default));
    }
}
