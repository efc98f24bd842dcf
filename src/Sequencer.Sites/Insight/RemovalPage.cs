using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>Each protection taken out in turn and what then fails, as a page and as JSON.</summary>
internal static class RemovalPage
{
    public const string Name = "insight/protections.md";

    public static string Write(LoadedSite site, ImmutableArray<Protection> protections, ImmutableArray<Removal> removals)
    {
        MarkdownPage page = new(site, "Each protection taken out in turn");
        page.Paragraph(
            "One protection at a time is taken out of the program, all others stay. `fails without it` names the requirements that are then\n" +
            "broken, with the length of a run that shows it, from power-up; the runs are in the folder `runs`. A run may use everything that\n" +
            "the requirement allows: outputs in manual, buttons in any order, signals that jump. `has another barrier` names those whose\n" +
            "first proof leant on it and that hold without it by another. All other requirements do not need it.");
        foreach (IGrouping<string, Protection> unit in protections.GroupBy(protection => protection.Unit))
        {
            page.Heading(unit.Key);
            Protection[] needed = [.. unit.Where(protection => Of(protection, removals).Any())];
            if (needed.Length > 0)
            {
                page.Table(
                    ["protection", "title", "fails without it", "has another barrier", "undecided"],
                    [.. needed.Select(protection => (string[])
                    [
                        protection.Name,
                        protection.Title,
                        Names(Of(protection, removals).Where(one => one.Verdict is Fails)),
                        Names(Of(protection, removals).Where(one => one.Verdict is Holds)),
                        Names(Of(protection, removals).Where(one => one.Verdict is Undecided)),
                    ])]);
            }

            Protection[] idle = [.. unit.Where(protection => !Of(protection, removals).Any())];
            if (idle.Length > 0)
            {
                page.Paragraph(
                    "No requirement needs these. Either a requirement is missing, or it stands beside another that does the same, or it is there\n" +
                    "for the operator and the equipment alone. For the review:");
                page.Table(["protection", "kind", "title"], [.. idle.Select(one => (string[])[one.Name, Kind(one.Kind), one.Title])]);
            }
        }

        return page.Finish();
    }

    public static JsonArray Json(ImmutableArray<Protection> protections, ImmutableArray<Removal> removals) =>
    [
        .. protections.Select(protection => new JsonObject
        {
            ["protection"] = protection.Name,
            ["kind"] = Kind(protection.Kind),
            ["title"] = protection.Title,
            ["failsWithoutIt"] = Array(Of(protection, removals).Where(one => one.Verdict is Fails)),
            ["hasAnotherBarrier"] = Array(Of(protection, removals).Where(one => one.Verdict is Holds)),
            ["undecided"] = Array(Of(protection, removals).Where(one => one.Verdict is Undecided)),
        }),
    ];

    public static string Kind(ProtectionKind kind) => kind switch
    {
        ProtectionKind.Interlock => "interlock",
        ProtectionKind.Exclusion => "exclusion",
        ProtectionKind.Permissive => "permissive",
        ProtectionKind.Trip => "trip",
        ProtectionKind.BatchMaximum => "batch maximum",
        ProtectionKind.Confirmation => "supervision of a device",
        ProtectionKind.StartCondition => "start condition",
        _ => throw new System.Diagnostics.UnreachableException($"no words for {kind}"),
    };

    private static IEnumerable<Removal> Of(Protection protection, ImmutableArray<Removal> removals) =>
        removals.Where(removal => removal.Protection == protection);

    private static string Names(IEnumerable<Removal> removals) => string.Join(", ", removals.Select(one => one.Verdict is Fails fails
        ? $"{one.Requirement.Name} ({RunLength.Of(one.System, fails)})"
        : one.Requirement.Name));

    private static JsonArray Array(IEnumerable<Removal> removals) => [.. removals.Select(one => JsonValue.Create(one.Requirement.Name))];
}
