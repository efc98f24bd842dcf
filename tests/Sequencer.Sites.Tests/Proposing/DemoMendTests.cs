using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Proposing;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Tests.Traces;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Proposing;

/// <summary>
/// An interlock of a demo site is left out, and what is proposed for the requirement that then fails is that interlock again: the
/// mended system is the unbroken one. Nothing else is judged here, which keeps it cheap.
/// </summary>
public sealed class DemoMendTests
{
    [Theory]
    [InlineData("inspection.seq", "interlock I1 ", "TK110.H1")]
    public void The_interlock_that_was_left_out_is_proposed(string file, string start, string requirement)
    {
        LoadedSite whole = SiteLoader.Load(new SiteFolder(RepositoryPath.Site("quillgate")), new DiagnosticBag())!;
        string line = File.ReadAllLines(RepositoryPath.Site("quillgate", file)).Single(one => one.StartsWith(start, StringComparison.Ordinal));
        LoadedSite broken = BrokenPit.Load("quillgate", file, line + "\n", "");
        Requirement asked = broken.System.Requirements.Single(one => one.Name == requirement);
        Fails fails = Assert.IsType<Fails>(Prover.Decide(broken.System, asked, ProofOptions.Default, null, CancellationToken.None));
        ImmutableArray<Verdict> verdicts = [fails];
        Baseline baseline = new(broken, verdicts, [], ProofSettings.Default, new Silence(), CancellationToken.None);
        MendSearch search = new(broken, new MendedSites(broken), baseline, new Silence(), CancellationToken.None);
        Proposal proposal = search.For(BrokenRequirement.Of(broken, verdicts).Single(), 0);
        Assert.NotNull(proposal.Mended);
        Assert.Equal(whole.MeaningHash, proposal.Mended.MeaningHash);
    }

    private sealed class Silence : IProgress<StageProgress>
    {
        public void Report(StageProgress value)
        {
        }
    }
}
