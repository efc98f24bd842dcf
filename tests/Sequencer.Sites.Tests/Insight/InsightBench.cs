using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Proof;
using Sequencer.Sites.Insight;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Insight;

/// <summary>A made-up unit U, its system and its verdicts, for questions with known answers.</summary>
internal sealed class InsightBench : IProgress<StageProgress>
{
    public InsightBench(string program)
    {
        SiteCheckResult result = SiteChecker.Check([new SourceText("bench.seq", program)], 100);
        Site = new SiteProgram("bench", 100, result.Units);
        Assert.DoesNotContain(result.Diagnostics, diagnostic => diagnostic.Severity == Severity.Error);
        System = SiteLowering.Lower(Site);
        Verdicts = Prover.DecideAll(System, ProofOptions.Default, 1, null, CancellationToken.None);
        Questions = new Questions(System, this, CancellationToken.None);
    }

    public SiteProgram Site { get; }

    public TransitionSystem System { get; }

    public ImmutableArray<Verdict> Verdicts { get; }

    public Questions Questions { get; }

    public void Report(StageProgress value)
    {
    }
}
