using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;

namespace Sequencer.Sites.Tests.Traces;

/// <summary>What fails only at the end of a batch is found, and not left undecided; every run found is replayed before it counts.</summary>
public sealed class DeepFailureTests
{
    [Theory]
    [InlineData("blocked unless RELEASED and ZSC300", "blocked unless RELEASED", "H15")]
    [InlineData("blocked from TT301 > 40.0 degC until TT301 < 38.0 degC", "blocked from TT301 > 48.0 degC until TT301 < 38.0 degC", "H8")]
    public void It_is_found(string before, string after, string requirement)
    {
        LoadedSite site = BrokenPit.Load("one-pit", "pit.seq", before, after);
        Requirement broken = site.System.Requirements.Single(one => one.Name == requirement);
        Verdict verdict = Prover.Decide(site.System, broken, ProofOptions.Default, null, CancellationToken.None);
        Assert.True(verdict is Fails, verdict.ToString());
    }
}
