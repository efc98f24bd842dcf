using System.Globalization;
using System.Text;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>Every variant of a site that was judged, by what became of it.</summary>
internal static class JudgementTable
{
    public static string Write(SiteFiles site, long scans, IReadOnlyList<Judgement> judgements)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"{site.Folder}: {judgements.Count} of {site.Possible} variants judged, one of each {site.Share} in the order of the lines, at most {site.Most}; {scans} random scans each\n");
        foreach (string name in Judgement.Classes)
        {
            text.Append(CultureInfo.InvariantCulture, $"{judgements.Count(one => one.Class == name),5}  {name}\n");
        }

        foreach (string name in Judgement.Classes)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{name}\n");
            foreach (((string file, Variant variant), Judgement judgement) in site.Judged.Zip(judgements).Where(pair => pair.Second.Class == name))
            {
                text.Append(CultureInfo.InvariantCulture, $"{Line(file, variant, judgement)}\n");
            }
        }

        return text.ToString();
    }

    /// <summary>The class under which a table has a variant; null where it has it not.</summary>
    public static string? ClassOf(string table, string file, Variant variant)
    {
        string? name = null;
        foreach (string line in table.Split('\n'))
        {
            name = Judgement.Classes.Contains(line) ? line : name;
            if (name is not null && line.EndsWith(Named(file, variant), StringComparison.Ordinal))
            {
                return name;
            }
        }

        return null;
    }

    public static string Line(string file, Variant variant, Judgement judgement) =>
        $"  {(judgement.What.Length > 0 ? judgement.What + ": " : "")}{Named(file, variant)}";

    public static string Named(string file, Variant variant) =>
        string.Create(CultureInfo.InvariantCulture, $"{file}:{variant.Line} {variant.Name}");
}
