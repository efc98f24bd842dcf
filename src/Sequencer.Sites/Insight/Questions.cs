using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Sites.Stages;

namespace Sequencer.Sites.Insight;

/// <summary>
/// Puts questions to the prover, several at a time, each with a budget in counts: the answers are the same on every machine.
/// </summary>
internal sealed class Questions(IProgress<StageProgress> progress, CancellationToken cancellation)
{
    private const int Degree = 2;

    /// <summary>A question that needs more is left undecided, and said to be.</summary>
    public static ProofOptions Budget { get; } = new() { Conflicts = 20_000, Propagations = 3_000_000, Refinements = 10 };

    public Verdict Ask(TransitionSystem system, Requirement requirement) => Prover.Decide(system, requirement, Budget, null, cancellation);

    /// <summary>The answer to each, in their order.</summary>
    public ImmutableArray<TAnswer> Each<TAsked, TAnswer>(string about, IReadOnlyList<TAsked> asked, Func<TAsked, CancellationToken, TAnswer> answer)
    {
        TAnswer[] answers = new TAnswer[asked.Count];
        int done = 0;
        Parallel.For(0, asked.Count, new ParallelOptions { MaxDegreeOfParallelism = Degree, CancellationToken = cancellation }, index =>
        {
            answers[index] = answer(asked[index], cancellation);
            int count = Interlocked.Increment(ref done);
            progress.Report(new StageProgress("insight", string.Create(CultureInfo.InvariantCulture, $"{about}, {count} of {asked.Count}")));
        });
        return [.. answers];
    }
}
