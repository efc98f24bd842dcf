using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites.Stages;

/// <summary>Every requirement that the programs state, decided.</summary>
internal static class ProofStage
{
    public static StageReport Run(
        LoadedSite site, ProofSettings settings, OutputFolder? folder, IProgress<StageProgress> progress, CancellationToken cancellation, out ImmutableArray<Verdict> verdicts)
    {
        ImmutableArray<Requirement> asked = Chosen(site.System.Requirements, settings);
        verdicts = Prover.DecideAll(site.System, asked, ProofOptions.Default, settings.Degree, settings.Memory, new ProofWords("prove", progress), cancellation);
        List<string> lines = [];
        JsonArray requirements = [];
        foreach (RequirementEvidence evidence in RequirementEvidence.OfAll(site, site.System, asked, verdicts, folder, settings.Degree, cancellation))
        {
            lines.AddRange(evidence.Lines());
            requirements.Add(evidence.Json());
        }

        string headline = asked.IsEmpty ? "no requirement of the programs was asked for" : $"{Count(verdicts)} requirements hold{Rest(verdicts)}";
        return new StageReport("prove", OutcomeOf(verdicts), headline, lines, new JsonObject { ["requirements"] = requirements });
    }

    /// <summary>All of them, or those that the settings name.</summary>
    public static ImmutableArray<Requirement> Chosen(ImmutableArray<Requirement> requirements, ProofSettings settings) => settings.Only.Count == 0
        ? requirements
        : [.. requirements.Where(requirement => settings.Only.Any(name => IsMeant(requirement.Name, name)))];

    public static bool IsMeant(string requirement, string name) =>
        requirement == name || requirement.StartsWith(name + ".", StringComparison.Ordinal);

    public static Outcome OutcomeOf(IReadOnlyCollection<Verdict> verdicts) =>
        verdicts.Any(verdict => verdict is Fails) ? Outcome.Fails
        : verdicts.Any(verdict => verdict is Undecided) ? Outcome.Undecided
        : Outcome.Holds;

    /// <summary>As <c>64 of 66</c>.</summary>
    public static string Count(IReadOnlyCollection<Verdict> verdicts) =>
        string.Create(CultureInfo.InvariantCulture, $"{verdicts.Count(verdict => verdict is Holds)} of {verdicts.Count}");

    /// <summary>As <c>, 1 fails, 1 undecided</c>.</summary>
    public static string Rest(IReadOnlyCollection<Verdict> verdicts) => string.Create(
        CultureInfo.InvariantCulture, $", {verdicts.Count(verdict => verdict is Fails)} fail, {verdicts.Count(verdict => verdict is Undecided)} undecided");
}
