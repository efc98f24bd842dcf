using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Language.Programs;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>The single failures that defeat a requirement about the plant, as a page and as JSON.</summary>
internal static class SingleFailurePage
{
    public const string Name = "insight/single-failures.md";

    public static string Write(LoadedSite site, ImmutableArray<SingleFailure> failures)
    {
        MarkdownPage page = new(site, "Single failures that defeat a requirement");
        page.Paragraph(
            "Every requirement that holds was proved for any signal of every instrument, so none can break it *as the program sees it*. Here\n" +
            "each is judged by what is so in the plant, while one instrument or device fails at any moment and for good: an instrument shows\n" +
            "something else than what it would show if it were well; a device stays where it is not told to be, and its position switches\n" +
            "show where it is. Listed is what the requirement speaks of; what it does not speak of cannot defeat it. The length is that of a run from\n" +
            "power-up which shows it, see the folder `runs`; runs are short where outputs in manual make them so.");
        page.Paragraph(
            "Where a requirement is defeated there is no second barrier in the program. That may be right: a second instrument, a person\n" +
            "or a device outside the controller may be the barrier. It is for the hazard study to say.");
        foreach (IGrouping<string, SingleFailure> unit in failures.GroupBy(one => one.Unit))
        {
            page.Heading(unit.Key);
            page.Table(
                ["what fails", "how", "defeats", "holds in spite of it", "undecided"],
                [
                    .. unit.GroupBy(one => one.Failure).OrderBy(group => group.Key.Tag, StringComparer.Ordinal).ThenBy(group => group.Key.Mode).Select(group => (string[])
                    [
                        group.Key.Tag,
                        How(site.Programs, group.Key),
                        Names(group.Where(one => one.Verdict is Fails)),
                        Names(group.Where(one => one.Verdict is Holds)),
                        Names(group.Where(one => one.Verdict is Undecided)),
                    ]),
                ]);
        }

        if (failures.IsEmpty)
        {
            page.Paragraph("No requirement that holds speaks of an instrument or a device.");
        }

        return page.Finish();
    }

    public static JsonArray Json(SiteProgram site, ImmutableArray<SingleFailure> failures) =>
    [
        .. failures.Select(one => new JsonObject
        {
            ["unit"] = one.Unit,
            ["tag"] = one.Failure.Tag,
            ["how"] = How(site, one.Failure),
            ["requirement"] = one.Requirement.Name,
            ["defeats"] = one.Verdict switch
            {
                Fails => true,
                Holds => false,
                _ => null,
            },
        }),
    ];

    /// <summary>What the instrument or device does, after its tag.</summary>
    public static string How(SiteProgram site, Failure failure)
    {
        bool isValve = site.Units.SelectMany(unit => unit.Outputs).Any(output => output.Tag == failure.Tag && output.Kind == OutputKind.Valve);
        return failure.Mode switch
        {
            FailureMode.Stuck => "sticks at any value",
            FailureMode.StuckLow => "sticks at its low end",
            FailureMode.StuckHigh => "sticks at its high end",
            FailureMode.Frozen => "freezes where it is",
            FailureMode.StuckOn => "sticks and says yes",
            FailureMode.StuckOff => "sticks and says no",
            FailureMode.StaysOn => isValve ? "stays open" : "does not stop",
            FailureMode.StaysOff => isValve ? "stays closed" : "does not start",
            _ => throw new System.Diagnostics.UnreachableException($"no words for {failure.Mode}"),
        };
    }

    private static string Names(IEnumerable<SingleFailure> failures) => string.Join(", ", failures.Select(one => one.Verdict is Fails fails
        ? $"{one.Requirement.Name} ({RunLength.Of(one.System, fails)})"
        : one.Requirement.Name));
}
