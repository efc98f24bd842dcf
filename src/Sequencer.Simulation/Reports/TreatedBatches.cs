using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;

namespace Sequencer.Simulation.Reports;

/// <summary>The finished batches of the tanks that treat them, what went into these tanks meanwhile, and how many a day can hold.</summary>
/// <param name="Count">Finished batches.</param>
/// <param name="WaterLitres">Water to treat that went into them.</param>
/// <param name="Into">All that went in, summed by where it came from.</param>
/// <param name="ADay">The most batches of a day.</param>
/// <param name="HeldBy">What allows no more, in words.</param>
internal sealed record TreatedBatches(int Count, double WaterLitres, ImmutableArray<LineLedger> Into, double ADay, string HeldBy)
{
    private const double LitresPerCubicMetre = 1000.0;
    private const string InADay = ".in_a_day_highest";

    /// <summary>Null where no tank that treats finished a batch with water to treat.</summary>
    public static TreatedBatches? Of(RunRecord record, SiteMetadata site, ImmutableArray<BatchTimes> times)
    {
        HashSet<string> tanks = [.. record.Ledger.Tanks.Where(tank => tank.TreatsBatches).Select(tank => tank.Name)];
        BatchClosing[] batches = [.. record.Batches.Where(batch => tanks.Contains(batch.Unit) && batch.State == UnitState.Complete && batch.ToScan is not null)];
        ImmutableArray<LineLedger> into =
        [
            .. batches.SelectMany(batch => batch.Passed.Where(line => line.ToEnd == FlowEnd.Tank && line.To == batch.Unit))
                .GroupBy(line => (line.From, line.FromEnd))
                .Select(lines => lines.First() with { Litres = lines.Sum(line => line.Litres), SolidKilograms = lines.Sum(line => line.SolidKilograms) })
                .OrderBy(line => IsToTreat(line) ? 0 : line.FromEnd == FlowEnd.Supply ? 1 : 2),
        ];
        double water = into.Where(IsToTreat).Sum(line => line.Litres);
        if (batches.Length == 0 || !(water > 0))
        {
            return null;
        }

        BatchTimes[] units = [.. times.Where(unit => tanks.Contains(unit.Unit))];
        string[] none = [.. tanks.Where(tank => units.All(unit => unit.Unit != tank)).Order(StringComparer.Ordinal)];
        string idle = none.Length == 0 ? "" : $" ({string.Join(" and ", none)} finished none in this run and {(none.Length == 1 ? "is" : "are")} not counted)";
        TreatedBatches free = new(
            batches.Length, water, into, units.Sum(unit => unit.MostADay), $"{string.Join(" and ", units.Select(unit => unit.Unit))}, one batch after the other{idle}");
        return site.DischargeLimits.Select(limit => Under(limit, record.Ledger, free)).Append(free).MinBy(held => held.ADay);
    }

    public static bool IsToTreat(LineLedger line) => line.FromEnd is FlowEnd.ToTreat or FlowEnd.Tank;

    private static TreatedBatches Under(DischargeLimit limit, PlantLedger ledger, TreatedBatches free)
    {
        if (!limit.Quantity.EndsWith(InADay, StringComparison.Ordinal) || limit.Maximum is not double cubicMetres)
        {
            return free;
        }

        double litres = ledger.Lines.Where(line => line.Name == limit.Quantity[..^InADay.Length]).Sum(line => line.Litres);
        return litres > 0
            ? free with
            {
                ADay = cubicMetres * LitresPerCubicMetre * free.Count / litres,
                HeldBy = string.Create(CultureInfo.InvariantCulture, $"the limit \"{limit.Title}\", {cubicMetres} m3"),
            }
            : free;
    }
}
