using System.Globalization;
using System.Text;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>Waters and reagents: for a batch, a cubic metre and a day, and in the whole run.</summary>
internal static class UseTables
{
    private const double LitresPerCubicMetre = 1000.0;

    public static void Batch(StringBuilder text, TreatedBatches? treated)
    {
        text.Append("## A batch\n\n");
        if (treated is null)
        {
            text.Append("No batch was finished in a tank that the plant description says `treats_batches`, so nothing is said of a batch or of a day.\n\n");
            return;
        }

        text.Append(CultureInfo.InvariantCulture, $"Of {treated.Count} finished {(treated.Count == 1 ? "batch" : "batches")}: what went into the tank that treats it while it lasted. ");
        text.Append(CultureInfo.InvariantCulture, $"A day holds at most {treated.ADay:0.0} batches, {DoseWords.Litres(treated.ADay * treated.WaterLitres / treated.Count)} of water to treat: held by {treated.HeldBy}.\n\n");
        MarkdownTable table = new("what", "a batch", "dry solids with it", "a m3 of water to treat", "a day");
        foreach (LineLedger line in treated.Into)
        {
            double batch = line.Litres / treated.Count;
            table.Add(
                Words(line), DoseWords.Litres(batch), Dry(line.SolidKilograms / treated.Count), DoseWords.Litres(line.Litres * LitresPerCubicMetre / treated.WaterLitres), DoseWords.Litres(batch * treated.ADay));
        }

        table.Append(text, "");
    }

    public static void Run(StringBuilder text, PlantLedger ledger)
    {
        text.Append("## Waters and reagents of the whole run\n\n");
        MarkdownTable table = new("what", "litres", "dry solids with them");
        foreach (IGrouping<string, LineLedger> source in ledger.Lines.Where(line => line.FromEnd != FlowEnd.Tank).GroupBy(Words, StringComparer.Ordinal))
        {
            Add(table, source.Key, source);
        }

        foreach (IGrouping<string, LineLedger> place in ledger.Lines.Where(line => line.ToEnd == FlowEnd.Outside).GroupBy(line => line.To, StringComparer.Ordinal))
        {
            Add(table, $"out: {place.Key}", place);
        }

        table.Append(text, "Nothing passed a line from outside or to there.");
    }

    private static string Dry(double kilograms) => WeightWords.IsSome(kilograms) ? WeightWords.Of(kilograms) : "-";

    private static void Add(MarkdownTable table, string what, IEnumerable<LineLedger> lines)
    {
        double litres = lines.Sum(line => line.Litres);
        if (litres != 0)
        {
            table.Add(what, DoseWords.Litres(litres), Dry(lines.Sum(line => line.SolidKilograms)));
        }
    }

    private static string Words(LineLedger line) => line.FromEnd switch
    {
        FlowEnd.Reagent => $"reagent: {line.From}",
        FlowEnd.Supply => $"other water: {line.From}",
        _ => $"water to treat: {line.From}",
    };
}
