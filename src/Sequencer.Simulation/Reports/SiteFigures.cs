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
    private const double LitresPerCubicMetre = 1000;

    public static string Write(RunRecord record, SiteMetadata site)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"# Site figures: {site.Name}, {record.Name}\n\n");
        text.Append("Of one simulated run of ").Append(DurationWords.Of(record.Seconds)).Append(
            ", to size and to compare by. The waters and the rates are those of the plant description; a real plant is measured. What is said of a day supposes that a batch of the slowest "
            + "unit begins as soon as the last has ended, all day, and that all else keeps up.\n\n");
        ImmutableArray<BatchTimes> times = BatchTimes.Of(record);
        double? batches = times.IsEmpty ? null : times[0].Batches;
        double? perDay = times.IsEmpty ? null : times[0].MostADay;
        Times(text, times);
        Waters(text, record.Ledger, batches, perDay);
        Solids(text, record.Ledger, batches, perDay);
        Attention(text, record, site);
        DoseTables.Discharge(text, record, site);
        Places(text, record.Ledger);
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

    private static void Waters(StringBuilder text, PlantLedger ledger, double? batches, double? perDay)
    {
        text.Append("## Waters and reagents\n\n");
        double treated = ledger.Lines.Where(line => line.FromEnd == FlowEnd.Supply).Sum(line => line.Litres);
        MarkdownTable table = new("what", "in the run", "a batch", "a m3 of water that came", "a day");
        foreach (IGrouping<string, LineLedger> source in ledger.Lines.Where(line => line.FromEnd != FlowEnd.Tank).GroupBy(line => line.From, StringComparer.Ordinal))
        {
            double litres = source.Sum(line => line.Litres);
            string kind = source.First().FromEnd == FlowEnd.Reagent ? "reagent" : "water in";
            table.Add($"{kind}: {source.Key}", DoseWords.Litres(litres), Each(litres / batches, "L"), treated > 0 ? Each(litres * LitresPerCubicMetre / treated, "L") : "-", Each(litres / batches * perDay, "L"));
        }

        foreach (IGrouping<string, LineLedger> place in ledger.Lines.Where(line => line.ToEnd == FlowEnd.Outside).GroupBy(line => line.To, StringComparer.Ordinal))
        {
            double litres = place.Sum(line => line.Litres);
            table.Add($"water out: {place.Key}", DoseWords.Litres(litres), Each(litres / batches, "L"), treated > 0 ? Each(litres * LitresPerCubicMetre / treated, "L") : "-", Each(litres / batches * perDay, "L"));
        }

        table.Append(text, "The plant has no lines.");
    }

    private static void Solids(StringBuilder text, PlantLedger ledger, double? batches, double? perDay)
    {
        if (ledger.Cakes.IsEmpty)
        {
            return;
        }

        text.Append("## What was carried away as cake\n\n");
        MarkdownTable table = new("filter", "what", "in the run", "a batch", "a day");
        foreach (CakeLedger cake in ledger.Cakes)
        {
            Row("filter aid, dry", cake.FilterAidKilograms);
            Row("other solids, dry", cake.SolidsKilograms);
            Row("with its water", cake.WetKilograms);
            double dry = cake.FilterAidKilograms + cake.SolidsKilograms;
            table.Add(cake.Filter, "water in it, by weight", cake.WetKilograms > 0 ? ValueWords.Significant(100 * (1 - (dry / cake.WetKilograms)), Figures, "%") : "-", "-", "-");

            void Row(string what, double kilograms) =>
                table.Add(cake.Filter, what, ValueWords.Significant(kilograms, Figures, "kg"), Each(kilograms / batches, "kg"), Each(kilograms / batches * perDay, "kg"));
        }

        table.Append(text, "");
    }

    private static void Attention(StringBuilder text, RunRecord record, SiteMetadata site)
    {
        text.Append("## Attention\n\n");
        MarkdownTable table = new("what", "times", "which");
        string[] answers = [.. record.Batches.SelectMany(batch => batch.Entries).Where(entry => site.Prompts.Any(prompt => prompt.Name == entry.Step)).Select(entry => entry.Step)];
        Add("questions answered", answers);
        Add("actions and faults of the scenario, answers among them", [.. record.Events.Where(happening => happening.Kind == RunEventKind.Action).Select(happening => happening.Words)]);
        Add("alarms raised", [.. record.Events.Where(happening => happening.Kind == RunEventKind.AlarmRaised).Select(happening => happening.Subject)]);
        table.Append(text, "");

        void Add(string what, string[] which) =>
            table.Add(what, which.Length.ToString(CultureInfo.InvariantCulture), string.Join("; ", which.Distinct(StringComparer.Ordinal)));
    }

    private static void Places(StringBuilder text, PlantLedger ledger)
    {
        text.Append("## Where water stayed\n\n");
        MarkdownTable table = new("tank", "at the start", "at the end", "over its rim");
        foreach (TankLedger tank in ledger.Tanks)
        {
            table.Add(tank.Name, DoseWords.Litres(tank.StartLitres), DoseWords.Litres(tank.Litres), DoseWords.Litres(tank.OverflowedLitres));
        }

        table.Append(text, "The plant has no tanks.");
    }

    private static void Substances(StringBuilder text, PlantLedger ledger)
    {
        text.Append("## Where substances stayed\n\n");
        MarkdownTable table = new("substance", "unit", "was there", "came", "turned into it", "went outside", "is there");
        foreach (SubstanceLedger substance in ledger.Substances.Where(substance => substance.Before != 0 || substance.Came != 0))
        {
            double throughput = substance.Before + substance.Came;
            string turned = Math.Abs(substance.Turned) < 1e-9 * throughput ? "-" : Amount(substance.Turned);
            table.Add(substance.Name, substance.Unit, Amount(substance.Before), Amount(substance.Came), turned, Amount(substance.Went), Amount(substance.Now));
        }

        table.Append(text, "The plant knows no substances.");

        static string Amount(double amount) => ValueWords.Significant(amount, Figures, "").TrimEnd();
    }

    private static string Each(double? amount, string unit) =>
        amount is not double value ? "-" : unit == "L" ? DoseWords.Litres(value) : ValueWords.Significant(value, Figures, unit);
}
