using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Sequencer.Plant.Titration;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Words;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Summaries;
using Sequencer.Text;

namespace Sequencer.Sites.Dosing;

/// <summary>From a titration of a sample to the reagent that a batch takes.</summary>
public static class DoseCalculation
{
    private const string Caution =
        "A sample is not a batch and a jar is no reactor: take a fresh sample of each kind of waste, dose most of this, wait, look, and only\n"
        + "then go on. The figures are for one reagent alone, at the temperature of the sample. They support review by a competent person;\n"
        + "they replace no safety data sheet, no local code and no licensed practice. Acids and bases burn and blind.\n";

    /// <param name="path">The titration table.</param>
    /// <param name="output">The folder for the figures and the picture; null for none.</param>
    public static SiteResult Run(string path, string? output)
    {
        DecodedText decoded;
        try
        {
            decoded = SourceDecoder.Decode(path.Replace('\\', '/'), File.ReadAllBytes(path), SiteFolder.LargestFileBytes);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return CommandRun.NotDone($"`{path}` cannot be read: {failure.Message}");
        }

        DiagnosticBag diagnostics = new();
        diagnostics.AddRange(decoded.Diagnostics);
        if (decoded.Text is null || diagnostics.HasErrors || DoseTableReader.Read(decoded.Text, diagnostics) is not { } table)
        {
            JsonObject mistaken = new() { ["schema"] = 1, ["outcome"] = nameof(Outcome.Fails), ["mistakes"] = diagnostics.InOrder().Length };
            return new SiteResult(Outcome.Fails, diagnostics.InOrder(), "no dose: the table has mistakes, and nothing was written\n", Summary.Print(mistaken), []);
        }

        string name = Path.GetFileNameWithoutExtension(path);
        string text = Text(name, table);
        string json = Json(table);
        try
        {
            return new SiteResult(Outcome.Holds, diagnostics.InOrder(), text, json, output is null ? [] : [.. Written(name, table, text, json, OutputFolder.Open(output))]);
        }
        catch (OutputRefusedException refused)
        {
            return CommandRun.NotDone(refused.Message);
        }
    }

    private static IEnumerable<string> Written(string name, DoseTable table, string text, string json, OutputFolder folder)
    {
        using EmbeddedFont font = new();
        folder.Keep("dose.txt", text);
        folder.Keep("dose.json", json);
        folder.Keep("titration.svg", TitrationPicture.Svg(name, table, font));
        folder.Keep("titration.png", TitrationPicture.Png(name, table, font));
        folder.Commit();
        return folder.Names;
    }

    private static string Text(string name, DoseTable table)
    {
        StringBuilder text = new();
        string kind = table.ReagentStrength > 0 ? "base" : "acid";
        text.Append(
            CultureInfo.InvariantCulture,
            $"{name}: {table.Titration.Points.Length} points, pH {table.LowestPh:0.00} to {table.HighestPh:0.00}; batch {DoseWords.Litres(table.BatchLitres)}, {kind} of {Math.Abs(table.ReagentStrength):0.###} mol/L (equivalents)\n\n");
        foreach (double setpoint in table.Setpoints.Select(setpoint => setpoint.Value))
        {
            DoseEstimate dose = table.Dose(setpoint);
            text.Append(
                CultureInfo.InvariantCulture,
                $"pH {setpoint:0.0#}: {DoseWords.Litres(dose.Dose, dose.Uncertainty)} (twice the standard uncertainty); {DoseWords.Litres(dose.Dose / table.BatchLitres * 1000)} for each m3\n");
            if (dose.Between is { } between)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"        no point was read between pH {between.LowPh:0.0#} and {between.HighPh:0.0#}: what the water takes there, {DoseWords.Litres(between.Litres)} in all, may sit anywhere; read points nearer to pH {setpoint:0.0#}\n");
            }

            foreach ((double off, DoseEstimate away) in Sideways(table, setpoint))
            {
                double there = away.Dose - dose.Dose;
                text.Append(CultureInfo.InvariantCulture, $"        {DoseWords.Litres(Math.Abs(there))} {(there > 0 ? "more" : "less")} and it is pH {setpoint + off:0.0#}\n");
            }
        }

        return text.Append('\n').Append(Caution).ToString();
    }

    /// <summary>A pH lower and higher, as far as the titration tells anything there.</summary>
    private static IEnumerable<(double Off, DoseEstimate Dose)> Sideways(DoseTable table, double setpoint) =>
        from off in new[] { -1.0, 1.0 }
        where setpoint + off >= table.LowestPh && setpoint + off <= table.HighestPh
        let dose = table.Dose(setpoint + off)
        where dose.Between is null
        select (off, dose);

    private static string Json(DoseTable table) => Summary.Print(new JsonObject
    {
        ["schema"] = 1,
        ["outcome"] = nameof(Outcome.Holds),
        ["batch_litres"] = table.BatchLitres,
        ["reagent_equivalents_per_litre"] = table.ReagentStrength,
        ["doses"] = new JsonArray([.. table.Setpoints.Select(setpoint =>
        {
            DoseEstimate dose = table.Dose(setpoint.Value);
            JsonObject told = new() { ["pH"] = setpoint.Value, ["litres"] = dose.Dose, ["uncertainty_litres"] = dose.Uncertainty };
            if (dose.Between is { } between)
            {
                told["no_point_between_pH"] = new JsonArray(between.LowPh, between.HighPh);
            }

            return (JsonNode)told;
        })]),
    });
}
