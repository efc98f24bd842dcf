using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Traces;

namespace Sequencer.Sites.Proposing;

/// <summary>A mend for each requirement that fails, proposed and never put in; <c>spec/mends.md</c> says what is tried and what is shown.</summary>
internal static class ProposalStage
{
    /// <param name="site">The site as it is.</param>
    /// <param name="verdicts">Of all its requirements and obligations.</param>
    /// <param name="ways">Of all its steps and transitions.</param>
    /// <param name="settings">What was proved before counts here too.</param>
    /// <param name="folder">Where the page and the certificates go; null is nowhere.</param>
    /// <param name="progress">How far it is.</param>
    /// <param name="cancellation">Ends the search; what was found stays.</param>
    public static StageReport Run(
        LoadedSite site,
        ImmutableArray<Verdict> verdicts,
        ImmutableArray<GoalVerdict> ways,
        ProofSettings settings,
        OutputFolder? folder,
        IProgress<StageProgress> progress,
        CancellationToken cancellation)
    {
        MendSearch search = new(site, new MendedSites(site), new Baseline(site, verdicts, ways, settings, progress, cancellation), progress, cancellation);
        ImmutableArray<BrokenRequirement> all = BrokenRequirement.Of(site, verdicts);
        ImmutableArray<(Proposal Proposal, string Why)> proposals =
        [
            .. all.Select((broken, index) =>
                (search.For(broken, all.Take(index).Count(other => other.Unit == broken.Unit)), string.Join("; ", FailingRun.Of(site, broken.Requirement, broken.Verdict, cancellation).Story.Reasons))),
        ];
        folder?.Keep(ProposalPage.Name, ProposalPage.Write(site, proposals));
        foreach (Proposal proposal in proposals.Select(one => one.Proposal))
        {
            if (proposal is { Mended: { } mended, Shown: { } shown })
            {
                Requirement requirement = mended.System.Requirements.First(one => one.Name == shown.Verdict.Requirement);
                folder?.Keep($"mends/{requirement.Name}.smt2", RequirementEvidence.Certificate(mended.System, requirement, shown.Verdict));
            }
        }

        int found = proposals.Count(one => one.Proposal.Shown is not null);
        string headline = proposals.IsEmpty
            ? "no `never` or `always` fails: nothing to mend"
            : string.Create(CultureInfo.InvariantCulture, $"for {found} of {proposals.Length} that fail a mend is proposed, none was put in");
        return new StageReport(
            "mends",
            Outcome.Holds,
            headline,
            [.. proposals.SelectMany(one => ProposalPage.Lines(site, one.Proposal, one.Why))],
            new JsonArray([.. proposals.Select(one => ProposalPage.Json(site, one.Proposal, one.Why))]));
    }
}
