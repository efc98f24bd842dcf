using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Sites.Stages;

namespace Sequencer.Sites.Proposing;

/// <summary>
/// Looks for the smallest addition that mends one requirement: what breaks in a run that is known is dropped, what fails a proof
/// leaves one more run, and what is proved must leave all else as it was. Budgets are counts.
/// </summary>
internal sealed class MendSearch(LoadedSite site, MendedSites sites, Baseline baseline, IProgress<StageProgress> progress, CancellationToken cancellation)
{
    private const int MostSystems = 600;
    private const int MostProofs = 60;
    private const int MostShown = 12;

    /// <summary>What a proof for one candidate may cost.</summary>
    public static ProofOptions Budget { get; } = new() { Conflicts = 50_000, Propagations = 30_000_000, Refinements = 40 };

    /// <summary>The first addition of which everything is shown, and what was tried.</summary>
    /// <param name="broken">What is to be mended.</param>
    /// <param name="number">Which of its unit's broken requirements it is, from 0.</param>
    public Proposal For(BrokenRequirement broken, int number)
    {
        Tried tried = new(progress, broken.Requirement.Name);
        BreakingRuns runs = new();
        runs.Add(broken.Verdict.Trace);
        RunEnd end = RunEnd.Of(site, broken.Unit, broken.Verdict.Trace);
        Candidates candidates = new(site, broken, number);
        try
        {
            foreach (Candidate candidate in candidates.Plain(end.Taken, end.On))
            {
                cancellation.ThrowIfCancellationRequested();
                if (tried.Systems >= MostSystems || tried.Proofs >= MostProofs || tried.Refused.Count >= MostShown)
                {
                    tried.IsCutShort = true;
                    break;
                }

                if (Try(candidate, broken, runs, tried) is { } found)
                {
                    return new Proposal(broken, candidate, found.Mended, found.Shown, tried);
                }
            }
        }
        catch (OperationCanceledException)
        {
            // What was decided before is kept; that no mend was found for want of time is said.
            tried.IsCutShort = true;
        }

        return new Proposal(broken, null, null, null, tried);
    }

    private (LoadedSite Mended, Shown Shown)? Try(Candidate candidate, BrokenRequirement broken, BreakingRuns runs, Tried tried)
    {
        if (sites.With(candidate) is not ({ } mended, var warnings))
        {
            return null;
        }

        tried.CountSystem();
        Requirement requirement = mended.System.Requirements.First(one => one.Name == broken.Requirement.Name);
        if (runs.Break(mended.System, requirement))
        {
            return null;
        }

        tried.Proofs++;
        switch (Prover.Decide(mended.System, requirement, Budget, null, cancellation))
        {
            case Fails fails:
                runs.Add(fails.Trace);
                return null;
            case Holds holds:
                (Shown? shown, string? objection) = baseline.Show(mended, holds);
                if (shown is not null)
                {
                    return (mended, shown with { Warnings = warnings });
                }

                tried.Refused.Add((candidate.Words, objection!));
                return null;
            default:
                tried.Undecided++;
                return null;
        }
    }
}
