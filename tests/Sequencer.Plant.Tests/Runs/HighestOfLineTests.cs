using Sequencer.Plant.Description;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>What a line keeps of a run is the most that passed it, whatever is so at the end.</summary>
public sealed class HighestOfLineTests
{
    private static readonly PlantModel Plant = PlainTank.Model(
        lines: "  out: {from: TK1, to: river, rate: 4 m3/h, through: [P2, XV1], keeps_highest: [flow, temperature, sodium]}");

    [Fact]
    public void Nothing_is_kept_while_nothing_passes()
    {
        RunningPlant plant = RunningPlant.Start(Plant);
        plant.Command(true, "P1", "P5");
        plant.Run(60.0);
        Assert.Equal(double.NaN, plant.Total("out.flow_highest"));
        Assert.Equal(double.NaN, plant.Total("out.temperature_highest"));
    }

    /// <summary>Cold and hot water in equal parts are 40 C, less the 2 L of cold water at the start; cold water then cools what is left.</summary>
    [Fact]
    public void The_most_is_kept_when_less_passes_later()
    {
        RunningPlant plant = RunningPlant.Start(Plant);
        plant.Command(true, "P1", "P5");
        plant.Run(600.0);
        plant.Command(false, "P5");
        plant.Command(true, "P2", "XV1");
        plant.Run(10.0);
        double warm = plant.Quantity("TK1.temperature");
        Assert.InRange(warm, 38.0, 40.0);
        plant.Run(3000.0);
        Assert.InRange(plant.Quantity("TK1.temperature"), 19.9, 35.0);
        Assert.InRange(plant.Total("out.temperature_highest"), warm, 40.0);
        Assert.Equal(4.0, plant.Total("out.flow_highest"), 1e-9);
        Assert.Equal(10.0, plant.Total("out.sodium_highest"), 0.2);
        plant.Command(false, "P2");
        plant.Run(60.0);
        Assert.Equal(4.0, plant.Total("out.flow_highest"), 1e-9);
    }

    /// <summary>4 m3/h for two minutes, three times, 23 h and 20 h apart: any two are in a day, all three never.</summary>
    [Fact]
    public void What_passed_in_a_day_is_kept_at_its_most()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(lines: "  out: {from: TK1, to: river, rate: 4 m3/h, through: [P2, XV1], keeps_highest: [in_a_day]}"));
        plant.Command(true, "P1", "P5");
        plant.Run(600.0);
        double[] most = [.. new[] { 23.0, 20.0, 24.0 }.Select(rest =>
        {
            plant.Command(true, "P2", "XV1");
            plant.Run(120.0);
            plant.Command(false, "P2", "XV1");
            for (double minute = 0.0; minute < rest * 60.0; minute++)
            {
                plant.Plant.Advance(60.0);
            }

            return plant.Total("out.in_a_day_highest");
        })];
        double once = most[0];
        Assert.Equal(4.0 * 120.0 / 3600.0, once, 0.01);
        Assert.Equal(2.0 * once, most[1], 0.01);
        Assert.Equal(most[1], most[2], 0.01);
        Assert.Equal(plant.Total("out.passed") / 1000.0, 3.0 * once, 0.02);
    }

    /// <summary>What leaves a tank in which solids settle depends on the depth that it is drawn at.</summary>
    [Fact]
    public void A_content_is_not_kept_of_what_is_drawn_where_solids_settle()
    {
        string text = File.ReadAllText(RepositoryPath.Site("quillgate", "plant.yaml"));
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(
            new SourceText("plant.yaml", text.Replace("draws_below: 100 mm}", "draws_below: 100 mm, keeps_highest: [flow, chromium]}", StringComparison.Ordinal)), diagnostics));
        Assert.Equal(["SEQ0803", "SEQ0803"], diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
        Assert.All(diagnostics.InOrder(), diagnostic => Assert.Equal("chromium", diagnostic.Span.Text.ToString()));
    }
}
