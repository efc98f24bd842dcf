using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Sites.Insight;

namespace Sequencer.Sites.Proposing;

/// <summary>What is proposed, as a page, as lines for a console and as JSON.</summary>
internal static class ProposalPage
{
    public const string Name = "mends.md";

    private const int MostRefusedOnConsole = 3;

    public static string Write(LoadedSite site, ImmutableArray<(Proposal Proposal, string Why)> proposals)
    {
        MarkdownPage page = new(site, "Mends that are proposed");
        page.Paragraph(
            "For each `never` and `always` that fails, the smallest interlock, or further condition of a transition, that was found to make it\n" +
            "hold. Nothing was changed in the site's files. A proposal restores the requirement *as it is written*. It does not judge the\n" +
            "hazard: whether the requirement says enough, whether to block is the safe thing to do, and whether the barrier belongs into\n" +
            "this controller at all is for a competent person, by the hazard study, the local codes and licensed practice. The run that breaks\n" +
            "the requirement is in the folder `traces`.");
        foreach ((Proposal proposal, string why) in proposals)
        {
            page.Heading($"{proposal.Broken.Requirement.Name} \"{proposal.Broken.Requirement.Title}\"");
            page.Paragraph($"`{proposal.Broken.Requirement.Statement}`");
            page.Paragraph($"It fails: {why}.");
            if (proposal is { Candidate: { } candidate, Shown: { } shown })
            {
                Difference difference = Difference.Of(candidate, Root(site));
                page.Paragraph($"Proposed, in {difference.Place}:\n\n```diff\n{string.Join('\n', difference.Lines)}\n```");
                page.Paragraph($"With it: {Claims(proposal, shown)}.");
            }
            else
            {
                page.Paragraph(Nothing(proposal.Tried));
            }

            page.Paragraph(Counts(proposal.Tried));
            if (proposal.Tried.Refused.Count > 0)
            {
                page.Table(["would mend it", "but"], [.. proposal.Tried.Refused.Select(one => (string[])[$"`{one.Words}`", one.Objection])]);
            }
        }

        if (proposals.IsEmpty)
        {
            page.Paragraph("No `never` and no `always` fails.");
        }

        return page.Finish();
    }

    public static IEnumerable<string> Lines(LoadedSite site, Proposal proposal, string why)
    {
        yield return $"{proposal.Broken.Requirement.Name} \"{proposal.Broken.Requirement.Title}\" fails: {why}";
        if (proposal is { Candidate: { } candidate, Shown: { } shown })
        {
            Difference difference = Difference.Of(candidate, Root(site));
            yield return $"  proposed, in {difference.Place}:";
            foreach (string line in difference.Lines)
            {
                yield return $"    {line}";
            }

            yield return $"  with it: {Claims(proposal, shown)}";
        }
        else
        {
            yield return $"  {Nothing(proposal.Tried)}";
            foreach ((string words, string objection) in proposal.Tried.Refused.Take(MostRefusedOnConsole))
            {
                yield return $"  not `{words}`: {objection}";
            }
        }

        yield return $"  {Counts(proposal.Tried)}";
    }

    public static JsonObject Json(LoadedSite site, Proposal proposal, string why)
    {
        Difference? difference = proposal.Candidate is null ? null : Difference.Of(proposal.Candidate, Root(site));
        return new JsonObject
        {
            ["requirement"] = proposal.Broken.Requirement.Name,
            ["why"] = why,
            ["place"] = difference?.Place,
            ["difference"] = new JsonArray([.. (difference?.Lines ?? []).Select(line => JsonValue.Create(line))]),
            ["proved"] = proposal.Shown is not null,
            ["heldAndHold"] = proposal.Shown?.Requirements,
            ["reached"] = proposal.Shown?.Ways,
            ["scenarios"] = proposal.Shown?.Scenarios,
            ["alsoHold"] = new JsonArray([.. (proposal.Shown?.AlsoHold ?? []).Select(name => JsonValue.Create(name))]),
            ["warnings"] = new JsonArray([.. (proposal.Shown?.Warnings ?? []).Select(one => JsonValue.Create(one.Code))]),
            ["tried"] = proposal.Tried.Systems,
            ["givenToTheProver"] = proposal.Tried.Proofs,
            ["undecided"] = proposal.Tried.Undecided,
            ["refused"] = new JsonArray([.. proposal.Tried.Refused.Select(one => new JsonObject { ["words"] = one.Words, ["objection"] = one.Objection })]),
            ["cutShort"] = proposal.Tried.IsCutShort,
        };
    }

    private static string Claims(Proposal proposal, Shown shown)
    {
        string also = shown.AlsoHold.IsEmpty ? "" : $", and {string.Join(", ", shown.AlsoHold)} too";
        string warnings = string.Concat(shown.Warnings.Select(one => $"; but a check then warns ({one.Code}): {one.Message}"));
        string scenarios = shown.Scenarios == 0 ? "no scenario came out as expected before, so none was compared" : shown.Scenarios == 1 ? "the scenario that came out as expected still does" : Line($"the {shown.Scenarios} scenarios that came out as expected still do");
        return Line($"{proposal.Broken.Requirement.Name} is proved{also}; the {shown.Requirements} requirements and obligations that held still hold, proved; the {shown.Ways} steps and transitions that could be reached still can, each by a run; {scenarios}{warnings}");
    }

    private static string Nothing(Tried tried) => tried.IsCutShort
        ? "Nothing was found within the budget."
        : "Nothing was found: no interlock or condition of the kind that is tried makes it hold and leaves the rest as it was.";

    private static string Counts(Tried tried) =>
        Line($"Tried, smallest first: {tried.Systems}. Broken by a run that was known: {tried.Systems - tried.Proofs}; given to the prover: {tried.Proofs}, left undecided by it: {tried.Undecided}; refused since something else would be spoilt: {tried.Refused.Count}.");

    /// <summary>The folder of the site, as the paths of its files begin.</summary>
    private static string Root(LoadedSite site)
    {
        string description = site.Description.Plant.Span.Source.Path;
        return description[..(description.LastIndexOf('/') + 1)];
    }

    private static string Line(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
