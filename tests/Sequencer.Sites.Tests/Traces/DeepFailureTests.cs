using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;

namespace Sequencer.Sites.Tests.Traces;

/// <summary>What fails only at the end of a batch is found, and not left undecided; every run found is replayed before it counts.</summary>
public sealed class DeepFailureTests
{
    private const string OnePit = "one-pit";

    /// <summary>The last two need a setting that the batch was started with, and a second batch.</summary>
    [Theory]
    [InlineData(OnePit, "pit.seq", "blocked unless RELEASED and ZSC300", "blocked unless RELEASED", "H15")]
    [InlineData(OnePit, "pit.seq", "blocked from TT301 > 40.0 degC until TT301 < 38.0 degC", "blocked from TT301 > 48.0 degC until TT301 < 38.0 degC", "H8")]
    [InlineData("sedgemere", "tank410.seq", "from -100 mV to 250 mV", "from -100 mV to 400 mV", "TK410.TANK_H5")]
    [InlineData("quillgate", "reactor.seq", "clear when XV100 or P103 or at step 30", "clear when P103 or at step 30", "TK101.H4F")]
    public void It_is_found(string folder, string file, string before, string after, string requirement)
    {
        LoadedSite site = BrokenPit.Load(folder, file, before, after);
        Requirement broken = site.ProofSystem.Requirements.Single(one => one.Name == requirement);
        Verdict verdict = Prover.Decide(site.ProofSystem, broken, ProofOptions.Default, null, CancellationToken.None);
        Assert.True(verdict is Fails, verdict.ToString());
    }
}
