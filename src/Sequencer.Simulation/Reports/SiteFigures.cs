using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>The figures of a site that a run gives: time, throughput, reagents, solids, attention and what left, for a batch, a cubic metre and a day.</summary>
public static class SiteFigures
{
    private const int Figures = 3;

    /// <summary>Of all of a substance: less is none.</summary>
    private const double Traces = 1e-9;

    public static string Write(RunRecord record, SiteMetadata site)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"# Site figures: {site.Name}, {record.Name}\n\n");
        text.Append("Of one simulated run of ").Append(DurationWords.Of(record.Seconds)).Append(
            ", to size and to compare by. The waters and the rates are those of the plant description; a real plant is measured. What is said of a day supposes that the next batch "
            + "begins as soon as one has ended, all day, and that all else keeps up.\n\n");
        ImmutableArray<BatchTimes> times = BatchTimes.Of(record);
        TreatedBatches? treated = TreatedBatches.Of(record, site, times);
        Times(text, times);
        UseTables.Batch(text, treated);
        UseTables.Run(text, record.Ledger);
        SolidTables.Cakes(text, record.Ledger, treated);
        SolidTables.Places(text, record.Ledger, treated);
        Attention(text, record, site);
        DoseTables.Discharge(text, record, site);
        WaterTables.Places(text, record.Ledger);
        Substances(text, record.Ledger);
        DoseTables.Balances(text, record);
        text.Append(
            "## Cautions\n\nThese figures support review by a competent person. They are no proof about the real plant, and replace no measurement, no analysis of what is discharged or carried away, "
            + "and no local code. The reagents named here burn, blind or poison.\n");
        return text.ToString();
    }

    private static void Times(StringBuilder text, ImmutableArray<BatchTimes> times)
    {
        text.Append("## Time\n\n");
        MarkdownTable table = new("unit", "batches finished", "mean time of one", "most a day");
        foreach (BatchTimes unit in times)
        {
            table.Add(unit.Unit, unit.Batches.ToString(CultureInfo.InvariantCulture), DurationWords.Of(unit.MeanSeconds), unit.MostADay.ToString("0.0", CultureInfo.InvariantCulture));
        }

        table.Append(text, "No unit finished a batch, so nothing can be said of a batch or a day.");
    }

    private static void Attention(StringBuilder text, RunRecord record, SiteMetadata site)
    {
        text.Append("## Attention\n\n");
        MarkdownTable table = new("what", "times", "which");
        string[] answers = [.. record.Batches.SelectMany(batch => batch.Entries).Where(entry => site.Prompts.Any(prompt => prompt.Name == entry.Step)).Select(entry => entry.Step)];
        Add("questions answered", answers);
        Add("actions and faults of the scenario, answers among them", [.. record.Events.Where(happening => happening.Kind == RunEventKind.Action).Select(happening => happening.Words)]);
        Add("alarms raised", [.. record.Events.Where(happening => happening.Kind == RunEventKind.AlarmRaised).Select(happening => happening.Subject)]);
        table.Append(text, "Nobody was needed: nothing was asked or done, and no alarm was raised.");

        void Add(string what, string[] which)
        {
            if (which.Length > 0)
            {
                table.Add(what, which.Length.ToString(CultureInfo.InvariantCulture), string.Join("; ", which.Distinct(StringComparer.Ordinal)));
            }
        }
    }

    private static void Substances(StringBuilder text, PlantLedger ledger)
    {
        text.Append("## Where substances stayed\n\n");
        MarkdownTable table = new("substance", "unit", "was there", "came", "turned into it", "went outside", "is there");
        foreach (SubstanceLedger substance in ledger.Substances.Where(substance => substance.Before != 0 || substance.Came != 0 || substance.Turned != 0))
        {
            double throughput = substance.Before + substance.Came + Math.Abs(substance.Turned);
            string Amount(double amount) => ValueWords.Significant(Math.Abs(amount) < Traces * throughput ? 0 : amount, Figures, "");

            string turned = Math.Abs(substance.Turned) < Traces * throughput ? "-" : Amount(substance.Turned);
            table.Add(substance.Name, substance.Unit, Amount(substance.Before), Amount(substance.Came), turned, Amount(substance.Went), Amount(substance.Now));
        }

        table.Append(text, "The plant knows no substances.");
    }
}
