using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>Which requirements hold only because what they speak of never happens, as a page and as JSON.</summary>
internal static class OccurrencePage
{
    public const string Name = "insight/happens.md";

    public static string Write(LoadedSite site, ImmutableArray<Occurrence> occurrences)
    {
        MarkdownPage page = new(site, "What the requirements speak of, and whether it ever happens");
        page.Paragraph(
            "A requirement that holds because its cause, its condition or one of its parts can never come about says nothing: it is vacuous.\n" +
            "Each part is asked for by itself. `happens` means that a run was found and replayed; its length from power-up is given, and it\n" +
            "may use outputs in manual. `never` is proved, for every run.");
        Section(page, "Vacuous: a part never happens", site, occurrences, false, "No requirement is vacuous for this reason.");
        Section(page, "Undecided within the budget", site, occurrences, null, "Nothing is undecided.");
        Section(page, "Each part happens", site, occurrences, true, "None.");
        page.Paragraph("Requirements that forbid one plain fact, or demand one always, have no part to ask for and are not listed.");
        return page.Finish();
    }

    public static JsonArray Json(ImmutableArray<Occurrence> occurrences) =>
    [
        .. occurrences.Select(one => new JsonObject
        {
            ["requirement"] = one.Requirement,
            ["role"] = one.Role,
            ["words"] = one.Words.ReplaceLineEndings(" "),
            ["happens"] = one.Happens,
        }),
    ];

    private static void Section(
        MarkdownPage page, string heading, LoadedSite site, ImmutableArray<Occurrence> occurrences, bool? happens, string none)
    {
        page.Heading(heading);
        Occurrence[] listed = [.. occurrences.Where(one => one.Happens == happens)];
        if (listed.Length == 0)
        {
            page.Paragraph(none);
            return;
        }

        page.Table(
            ["requirement", "title", "what", "words", "found"],
            [.. listed.Select(one => (string[])[one.Requirement, one.Title, one.Role, one.Words, Found(site.System, one.Verdict)])]);
    }

    private static string Found(TransitionSystem system, Verdict verdict) => verdict switch
    {
        Fails fails => $"happens, {RunLength.Of(system, fails)}",
        Holds => "never",
        Undecided { Reason: UndecidedReason.Budget } => "no run found, no proof",
        Undecided undecided => undecided.Words,
        _ => throw new System.Diagnostics.UnreachableException("an unknown verdict"),
    };
}
