using System.Globalization;
using Sequencer.Proof;

namespace Sequencer.Sites.Stages;

/// <summary>Where a proof stands, in words.</summary>
internal sealed class ProofWords(string stage, IProgress<StageProgress> progress) : IProgress<ProofProgress>
{
    public void Report(ProofProgress value) => progress.Report(new StageProgress(
        stage, string.Create(CultureInfo.InvariantCulture, $"{value.Requirement}: {value.Engine}, depth {value.Depth}")));
}
