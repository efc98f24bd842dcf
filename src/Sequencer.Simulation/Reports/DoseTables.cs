using System.Globalization;
using System.Text;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>What was given, what left the site, and whether the plant model kept its balances.</summary>
internal static class DoseTables
{
    private const int Figures = 4;

    public static void Doses(StringBuilder text, RunRecord record, SiteMetadata site)
    {
        text.Append("## Doses\n\n");
        MarkdownTable table = new("reagent", "output", "pulses", "time on", "declared rate", "given");
        foreach (ReagentMetadata reagent in site.Reagents)
        {
            if (record.Outputs.FirstOrDefault(output => output.Output == reagent.Output) is not OutputTally tally)
            {
                continue;
            }

            double seconds = record.SecondsAt(tally.OnScans);
            table.Add(
                reagent.Reagent,
                reagent.Output,
                tally.Pulses.ToString(CultureInfo.InvariantCulture),
                DurationWords.Of(seconds),
                ValueWords.Significant(reagent.LitresPerMinute, Figures, "L/min"),
                ValueWords.Of(seconds / 60 * reagent.LitresPerMinute, 2, "L"));
        }

        table.Append(text, "No output of the site delivers a reagent.");
        if (site.Reagents.Length > 0)
        {
            text.Append("Given is time on at the declared rate; what a real pump delivers must be measured.\n\n");
        }
    }

    public static void Discharge(StringBuilder text, RunRecord record, SiteMetadata site)
    {
        text.Append("## Discharge against the site's limits\n\n");
        MarkdownTable table = new("what", "quantity", "in the run", "limits", "result");
        foreach (DischargeFinding finding in DischargeFinding.Of(record, site))
        {
            string verdict = !finding.HasValue ? "nothing to compare" : finding.IsOutside ? "**OUTSIDE**" : "within";
            string value = finding.HasValue ? ValueWords.Significant(finding.Value, Figures, finding.Unit) : "none";
            table.Add(finding.Limit.Title, finding.Limit.Quantity, value, Bounds(finding.Limit, finding.Unit), verdict);
        }

        table.Append(text, "No discharge limits were given.");
    }

    public static void Balances(StringBuilder text, RunRecord record)
    {
        text.Append("## Balances of the plant model\n\n");
        if (record.Balances is not { } balances)
        {
            text.Append("The record was not finished.\n\n");
            return;
        }

        MarkdownTable table = new("kept", "left over, as a share of the throughput");
        table.Add("volume", Share(balances.Volume));
        table.Add(balances.WorstSubstance.Length == 0 ? "dissolved substances" : $"substances (worst: {balances.WorstSubstance})", Share(balances.Substance));
        table.Add("charge of the ions", Share(balances.Charge));
        table.Append(text, "");
        if (balances.TooStrong.Length > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"**Stronger than 0.5 mol/kg was the water of {balances.TooStrong}**: Davies' activities are a guess there, and so is its pH.\n\n");
        }
    }

    private static string Share(double share) => Math.Abs(share) switch
    {
        double.NaN => "not a number",
        < 1e-12 => "less than 1e-12",
        double size => size.ToString("0.0e+0", CultureInfo.InvariantCulture),
    };

    private static string Bounds(DischargeLimit limit, string unit) => (limit.Minimum, limit.Maximum) switch
    {
        (double low, double high) => $"{ValueWords.Significant(low, Figures, "")} to {ValueWords.Significant(high, Figures, unit)}",
        (double low, null) => $"at least {ValueWords.Significant(low, Figures, unit)}",
        (null, double high) => $"at most {ValueWords.Significant(high, Figures, unit)}",
        _ => "none",
    };
}
