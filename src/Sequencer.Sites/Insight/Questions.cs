using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Insight;
using Sequencer.Sites.Stages;

namespace Sequencer.Sites.Insight;

/// <summary>
/// Puts questions to the prover, several at a time, each with a budget in counts: the answers are the same on every machine.
/// </summary>
internal sealed class Questions(TransitionSystem site, IProgress<StageProgress> progress, CancellationToken cancellation)
{
    private const int Degree = 2;

    /// <summary>What takes fewer scans is found anew as quickly.</summary>
    private const int WorthKnowing = 20;

    /// <summary>A question that needs more is left undecided, and said to be.</summary>
    public static ProofOptions Budget { get; } = new() { Conflicts = 20_000, Propagations = 3_000_000, Refinements = 10 };

    private static ProofOptions Shallow { get; } = Budget with { Engines = Engines.Ranges | Engines.Bounded };

    /// <summary>Runs of the site found so far, each with something in it that other runs lack: what others may begin with.</summary>
    public ImmutableArray<Trace> Known { get; private set; } = [];

    /// <summary>Adds runs, shortest first, to those that others may begin with.</summary>
    public void Learn(IEnumerable<Trace> runs) => Known =
        [.. Known.Concat(runs.Where(run => run.Scans >= WorthKnowing)).DistinctBy(Content).OrderBy(run => run.Scans)];

    /// <summary>What a few scans show; then what known runs lead to; then the prover's whole art, within the budget.</summary>
    public Verdict Ask(TransitionSystem system, Requirement requirement) =>
        Prover.Decide(system, requirement, Shallow, null, cancellation) is var shallow and not Undecided
            ? shallow
            : Continuation.FailingRun(system, requirement, KnownIn(system), Budget, cancellation)
                ?? Prover.Decide(system, requirement, Budget, null, cancellation);

    /// <summary>The same of a requirement that holds on the site itself: its invariant may prove it here too.</summary>
    public Verdict AskOfHeld(TransitionSystem system, Requirement requirement, Holds held)
    {
        Verdict shallow = Prover.Decide(system, requirement, Shallow, null, cancellation);
        return shallow is Undecided && Leaning.Of(system, requirement, held.Invariant, Budget, cancellation) is { } leanedOn
            ? new Holds(requirement.Name, held.Invariant, held.Engine, leanedOn, shallow.Effort)
            : shallow is Undecided ? Ask(system, requirement) : shallow;
    }

    /// <summary>A question that was left open, once more with the runs found since.</summary>
    public Verdict AskAgain(TransitionSystem system, Requirement requirement, Verdict open) =>
        open is Undecided && Continuation.FailingRun(system, requirement, KnownIn(system), Budget, cancellation) is { } found ? found : open;

    /// <summary>The known runs for a system with other inputs beside the site's: those are at rest.</summary>
    private IEnumerable<Trace> KnownIn(TransitionSystem system)
    {
        if (system.Inputs.Select(input => input.Name).SequenceEqual(site.Inputs.Select(input => input.Name), StringComparer.Ordinal))
        {
            return Known;
        }

        Dictionary<string, int> places = site.Inputs.ToDictionary(input => input.Name, input => input.Index, StringComparer.Ordinal);
        (int Place, long Idle)[] wiring =
            [.. system.Inputs.Select(input => (places.GetValueOrDefault(input.Name, -1), Math.Clamp(0, input.Range.Minimum, input.Range.Maximum)))];
        return Known.Select(run => new Trace(
            [.. run.Segments.Select(segment => segment with { Inputs = [.. wiring.Select(wire => wire.Place < 0 ? wire.Idle : segment.Inputs[wire.Place])] })]));
    }

    private static string Content(Trace run) =>
        string.Join(';', run.Segments.Select(segment => string.Create(CultureInfo.InvariantCulture, $"{segment.Scans}:{string.Join(',', segment.Inputs)}")));

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
