using System.Globalization;
using System.Text;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>Every variant of a program with who noticed it, and the survivors with the reason.</summary>
internal static class VariantTable
{
    private static readonly string[] Order = [Finding.Checker, Finding.Prover, Finding.Simulator, Finding.Unproved, Finding.Nobody];

    public static string Write(VariantSite site, IReadOnlyList<Finding> findings)
    {
        StringBuilder text = new();
        string counts = string.Join(", ", Order.Select(by => string.Create(CultureInfo.InvariantCulture, $"{by} {findings.Count(finding => finding.By == by)}")));
        text.Append(CultureInfo.InvariantCulture, $"{site.Variants.Length} variants of {site.ProgramFile}, noticed by: {counts}\n");
        foreach (string by in Order)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{by}\n");
            foreach ((Variant variant, Finding finding) in site.Variants.Zip(findings).Where(pair => pair.Second.By == by))
            {
                text.Append(Line(site, variant, finding)).Append('\n');
            }
        }

        return text.ToString();
    }

    public static string Line(VariantSite site, Variant variant, Finding finding) => finding.By == Finding.Nobody
        ? $"  {variant.Name}\n      {SurvivorReasons.Of(variant) ?? "NOT EXPLAINED"}"
        : $"  {finding.What}: {variant.Name}";
}
