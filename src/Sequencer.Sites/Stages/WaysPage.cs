using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Language.Units;
using Sequencer.Proof.Reaching;

namespace Sequencer.Sites.Stages;

/// <summary>The shortest way found to each step and transition, as a page.</summary>
internal static class WaysPage
{
    public const string Name = "ways.md";

    public static string Write(LoadedSite site, ImmutableArray<GoalVerdict> ways)
    {
        StringBuilder page = new();
        page.Append($"# {site.Description.Name}: the way to each step and transition\n\n");
        page.Append("The shortest run found from the first scan after power-up, replayed scan by scan. It is not claimed that there is none shorter.\n");
        page.Append("A way shows that the program can get there with the inputs it is given, not that the plant gives them.\n");
        foreach (IGrouping<string, GoalVerdict> unit in ways.GroupBy(way => way.Goal.Unit))
        {
            page.Append($"\n## {unit.Key}\n\n| what | after | changes of inputs |\n| --- | --- | --- |\n");
            foreach (GoalVerdict way in unit)
            {
                page.Append(CultureInfo.InvariantCulture, $"| {way.Goal.Words.Replace("|", "\\|", StringComparison.Ordinal)} | {After(site, way)} | {(way as Reached)?.Way.Segments.Length.ToString(CultureInfo.InvariantCulture) ?? ""} |\n");
            }
        }

        return page.ToString();
    }

    public static string Time(LoadedSite site, long scans) => new Duration(scans * site.System.ScanMilliseconds).InParts();

    private static string After(LoadedSite site, GoalVerdict verdict) => verdict switch
    {
        Reached reached => Time(site, reached.Way.Scans),
        Unreachable => "**never**: proved",
        NotFound notFound => $"not found: {notFound.Words}",
        _ => throw new System.Diagnostics.UnreachableException("a verdict of another kind"),
    };
}
