using System.Globalization;
using System.Text;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Reports;

/// <summary>Solids of a run: what filters gave to be carried away, and what lies in tanks.</summary>
internal static class SolidTables
{
    private const int Figures = 3;
    private const int FiguresOfWater = 4;
    private const double MostTold = 99.995;

    public static void Cakes(StringBuilder text, PlantLedger ledger, TreatedBatches? treated)
    {
        if (ledger.Cakes.IsEmpty)
        {
            return;
        }

        text.Append("## What was carried away as cake\n\n");
        MarkdownTable table = new("filter", "what", "in the run", "shared among its finished batches", "a day");
        foreach (CakeLedger cake in ledger.Cakes)
        {
            Row("filter aid, dry", cake.FilterAidKilograms);
            Row("other solids, dry", cake.SolidsKilograms);
            Row("with its water", cake.WetKilograms);
            double dry = cake.FilterAidKilograms + cake.SolidsKilograms;
            table.Add(cake.Filter, "water in it, by weight", cake.WetKilograms > 0 ? ValueWords.Significant(100 * (1 - (dry / cake.WetKilograms)), Figures, "%") : "-", "-", "-");

            if (cake.CoatMillimetres is { } coat && cake.CutMillimetres is { } cut)
            {
                table.Add(cake.Filter, "coat cut off", Thickness(cut), Thickness(cut / treated?.Count), "-");
                table.Add(cake.Filter, "coat left at the end", Thickness(coat), Left(coat, cut, treated), "-");
            }

            void Row(string what, double kilograms) =>
                table.Add(cake.Filter, what, WeightWords.Of(kilograms), WeightWords.OrDash(kilograms / treated?.Count), WeightWords.OrDash(kilograms / treated?.Count * treated?.ADay));
        }

        table.Append(text, "");
    }

    private static string Thickness(double? millimetres) => millimetres is { } value ? ValueWords.Significant(value, Figures, "mm") : "-";

    /// <summary>To the cloth: where the knife is to stop sooner is for the program.</summary>
    private static string Left(double coat, double cut, TreatedBatches? treated) => treated is { } batches && cut > 0
        ? string.Create(CultureInfo.InvariantCulture, $"{coat * batches.Count / cut:0.0} batches ({24 * coat * batches.Count / cut / batches.ADay:0} h) to the bare cloth")
        : "-";

    public static void Places(StringBuilder text, PlantLedger ledger, TreatedBatches? treated)
    {
        (string Name, double Start, double Now, double WaterLitres)[] places =
        [
            .. ledger.Tanks.Select(tank => (tank.Name, tank.StartSolidKilograms, tank.SolidKilograms, tank.Litres)),
            .. ledger.Cakes.Select(cake => ($"on {cake.Filter}", cake.StartHeldKilograms, cake.HeldKilograms, cake.HeldWaterLitres)),
        ];
        places = [.. places.Where(place => WeightWords.IsSome(place.Start) || WeightWords.IsSome(place.Now))];
        if (places.Length == 0)
        {
            return;
        }

        text.Append("## Where solids lie\n\n");
        MarkdownTable table = new("place", "dry at the start", "dry at the end", "more by", "more for each finished batch", "dry in 100 kg of water at the end", "water in it at the end, by weight");
        foreach ((string name, double start, double now, double litres) in places)
        {
            table.Add(
                name,
                WeightWords.Of(start),
                WeightWords.Of(now),
                WeightWords.Of(now - start),
                WeightWords.OrDash((now - start) / treated?.Count),
                litres > 0 ? WeightWords.Of(100 * now / litres) : "-",
                WeightWords.IsSome(now) ? WaterShare(100 * litres / (litres + now)) : "-");
        }

        table.Append(text, "");
        text.Append("Of a metal that a filter or a settling tank of this plant holds only what is solid at the pH of its water is counted; a litre counts as a kilogram. "
            + "The water of a tank is that of all it holds, as a pump draws it that stirs it up: how far sludge thickens when it stands longer, and how wet it is carried away from there, the plant model does not know.\n\n");
    }

    /// <summary>What rounds to all of it is not said to be.</summary>
    private static string WaterShare(double percent) => percent > MostTold ? "more than 99.99 %" : ValueWords.Significant(percent, FiguresOfWater, "%");
}
