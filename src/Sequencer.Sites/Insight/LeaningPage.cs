using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Sites.Insight;

/// <summary>Which protections and assumptions each verdict leans on, as a page and as JSON.</summary>
internal static class LeaningPage
{
    public const string Name = "insight/leans-on.md";

    public static string Write(LoadedSite site, ImmutableArray<(Requirement Requirement, LeansOn? Found)> leanings)
    {
        MarkdownPage page = new(site, "What each verdict leans on");
        page.Paragraph(
            "Each requirement below holds. Its proof needs the protections and assumptions of its line, each of them, and no other: with all\n" +
            "other protections out of force in any scans whatever, the same proof still stands. Another proof may lean on others; what fails\n" +
            "when one is taken out is in protections.md.");
        page.Table(
            ["requirement", "title", "protections", "assumptions"],
            [.. leanings.Select(one => (string[])[one.Requirement.Name, one.Requirement.Title, Protections(one.Found), Assumptions(one.Found)])]);
        page.Paragraph("`none`: it holds by the procedure, the latches and the ranges alone.");
        return page.Finish();
    }

    public static JsonArray Json(ImmutableArray<(Requirement Requirement, LeansOn? Found)> leanings) =>
    [
        .. leanings.Select(one => new JsonObject
        {
            ["requirement"] = one.Requirement.Name,
            ["told"] = one.Found is not null,
            ["protections"] = new JsonArray([.. (one.Found?.Protections ?? []).Select(protection => JsonValue.Create(protection.Name))]),
            ["assumptions"] = new JsonArray([.. (one.Found?.Assumptions ?? []).Select(name => JsonValue.Create(name))]),
        }),
    ];

    private static string Protections(LeansOn? found) => found switch
    {
        null => "not told within the budget",
        { Protections.IsEmpty: true } => "none",
        _ => string.Join(", ", found.Protections.Select(protection => protection.Name)),
    };

    private static string Assumptions(LeansOn? found) => found is null || found.Assumptions.IsEmpty ? "" : string.Join(", ", found.Assumptions);
}
