using System.Globalization;
using System.Text;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>Where the water of a run stayed, filters among the places, and that no more and no less came than stayed and went.</summary>
internal static class WaterTables
{
    /// <summary>Of what was there and came: less is the rounding of sums.</summary>
    private const double Rounding = 1e-9;

    public static void Places(StringBuilder text, PlantLedger ledger)
    {
        text.Append("## Where water stayed\n\n");
        MarkdownTable table = new("place", "at the start", "at the end", "over its rim");
        foreach (TankLedger tank in ledger.Tanks)
        {
            table.Add(tank.Name, DoseWords.Litres(tank.StartLitres), DoseWords.Litres(tank.Litres), DoseWords.Litres(tank.OverflowedLitres));
        }

        foreach (CakeLedger cake in ledger.Cakes)
        {
            table.Add($"on {cake.Filter}, with its grains", DoseWords.Litres(cake.StartHeldLitres), DoseWords.Litres(cake.HeldLitres), "-");
        }

        table.Append(text, "The plant has no tanks.");
        if (!ledger.Tanks.IsEmpty)
        {
            Sum(text, ledger);
        }
    }

    /// <summary>Grains count with the water that they came with, in tanks, on filters and in cake.</summary>
    private static void Sum(StringBuilder text, PlantLedger ledger)
    {
        double before = ledger.Tanks.Sum(tank => tank.StartLitres) + ledger.Cakes.Sum(cake => cake.StartHeldLitres);
        double came = ledger.Lines.Where(line => line.FromEnd != FlowEnd.Tank).Sum(line => line.Litres);
        double went = ledger.Lines.Where(line => line.ToEnd == FlowEnd.Outside).Sum(line => line.Litres);
        double cake = ledger.Cakes.Sum(filter => filter.TakenLitres);
        double over = ledger.Tanks.Sum(tank => tank.OverflowedLitres);
        double now = ledger.Tanks.Sum(tank => tank.Litres) + ledger.Cakes.Sum(filter => filter.HeldLitres);
        double left = before + came - went - cake - over - now;
        MarkdownTable table = new("water, with the grains in it", "litres");
        Add("was there", before);
        Add("came by lines", came);
        Add("went outside by lines", went);
        if (!ledger.Cakes.IsEmpty)
        {
            Add("was carried away as cake", cake);
        }

        Add("ran over rims", over);
        Add("is there", now);
        Add("not accounted for", Math.Abs(left) <= Rounding * (before + came) ? 0.0 : left);
        table.Append(text, "");

        void Add(string what, double litres) => table.Add(what, litres.ToString("0.0", CultureInfo.InvariantCulture));
    }
}
