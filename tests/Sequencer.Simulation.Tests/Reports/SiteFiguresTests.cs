using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Reports;
using Sequencer.Simulation.Tests.Tank;
using Sequencer.Testing;

namespace Sequencer.Simulation.Tests.Reports;

public sealed class SiteFiguresTests
{
    /// <summary>A tank dosed and filtered, some of the filtrate brought back.</summary>
    private static PlantLedger Filtered { get; } = new(
        [new TankLedger("TK1", 100, 160, 0), new TankLedger("TK2", 50, 40, 12)],
        [
            new LineLedger("fill", "works", FlowEnd.Supply, "TK1", FlowEnd.Tank, 5000),
            new LineLedger("lime", "LIME", FlowEnd.Reagent, "TK1", FlowEnd.Tank, 4.5),
            new LineLedger("back", "TK2", FlowEnd.Tank, "TK1", FlowEnd.Tank, 900),
            new LineLedger("out", "TK2", FlowEnd.Tank, "sewer", FlowEnd.Outside, 4800),
            new LineLedger("never", "TK2", FlowEnd.Tank, "store", FlowEnd.Outside, 0),
        ],
        [new SubstanceLedger("calcium", "mol", 1, 5, 8, 1.5), new SubstanceLedger("suspended", "g", 0, 2000, 1990, 10), new SubstanceLedger("nothing", "mol", 0, 0, 0, 0)],
        [new CakeLedger("F1", "TK1", "knife of F1", 10, 2, 40, 5700, "TK2")]);

    private static RunRecord Record => TankRun.Play(TankRun.Batch).Record with { Ledger = Filtered };

    [Fact]
    public void The_figures_are_the_golden_ones() => GoldenFile.Matches(SiteFigures.Write(Record, TankProgram.Site), "tank-figures.verified.md");

    [Fact]
    public void The_flow_picture_is_the_golden_one()
    {
        using EmbeddedFont font = new();
        GoldenFile.Matches(FlowPicture.Svg(Record, "Tank", font), "tank-flow.verified.svg");
    }

    [Fact]
    public void Boxes_stand_behind_what_feeds_them_and_what_leads_back_is_a_return()
    {
        FlowLayout layout = FlowLayout.Of(Filtered, 0);
        Assert.Equal(["LIME", "TK1", "TK2", "knife of F1", "over the rim", "sewer", "works"], layout.Nodes.Select(node => node.Name).Order(StringComparer.Ordinal));
        Assert.Equal(["back 900 L"], layout.Bands.Where(band => band.IsReturn).Select(band => band.Words));
        Assert.All(layout.Bands.Where(band => !band.IsReturn), band => Assert.True(band.From.Column < band.To.Column, band.Words));
        foreach (IGrouping<int, FlowNode> column in layout.Nodes.GroupBy(node => node.Column))
        {
            FlowNode[] down = [.. column.OrderBy(node => node.Top)];
            Assert.All(down.Zip(down.Skip(1)), pair => Assert.True(pair.First.Top + pair.First.Height < pair.Second.Top));
        }

        Assert.All(layout.Nodes, node => Assert.All(node.In, band => Assert.InRange(band.ToY, node.Top, node.Top + node.Height)));
    }

    [Fact]
    public void Without_a_finished_batch_nothing_is_said_of_a_day()
    {
        string figures = SiteFigures.Write(Record with { Batches = [] }, TankProgram.Site);
        Assert.Contains("No unit finished a batch, so nothing can be said of a batch or a day.", figures, StringComparison.Ordinal);
        Assert.Contains("| water in: works | 5000 L | - | 1000 L | - |", figures, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plant_without_flows_has_an_empty_picture()
    {
        using EmbeddedFont font = new();
        Assert.Contains("where the water went", FlowPicture.Svg(Record with { Ledger = PlantLedger.Empty }, "Tank", font), StringComparison.Ordinal);
    }
}
