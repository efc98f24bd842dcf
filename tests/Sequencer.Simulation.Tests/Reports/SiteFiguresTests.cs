using Sequencer.Plant;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Reports;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Tests.Tank;
using Sequencer.Testing;

namespace Sequencer.Simulation.Tests.Reports;

public sealed class SiteFiguresTests
{
    /// <summary>A tank dosed and filtered, some of the filtrate brought back.</summary>
    private static PlantLedger Filtered { get; } = new(
        [new TankLedger("R101", true, 100, 160, 0, 0, 0.25), new TankLedger("TK2", false, 50, 143.5, 12, 0, 0)],
        [
            new LineLedger("fill", "works", FlowEnd.ToTreat, "R101", FlowEnd.Tank, 5000, 2),
            new LineLedger("lime", "LIME", FlowEnd.Reagent, "R101", FlowEnd.Tank, 4.5, 0.45),
            new LineLedger("back", "TK2", FlowEnd.Tank, "R101", FlowEnd.Tank, 900, 0),
            new LineLedger("out", "TK2", FlowEnd.Tank, "sewer", FlowEnd.Outside, 4800, 0.01),
            new LineLedger("never", "TK2", FlowEnd.Tank, "store", FlowEnd.Outside, 0, 0),
        ],
        [new SubstanceLedger("calcium", "mol", 1, 5, 8, 1.5), new SubstanceLedger("chromium", "mol", 0, 0, 0.5, 2), new SubstanceLedger("suspended", "g", 0, 2000, 1990, 10), new SubstanceLedger("nothing", "mol", 0, 0, 0, 0)],
        [new CakeLedger("F1", "R101", "knife of F1", 10, 2, 40, 5700, "TK2", 0, 3, 30, 0, 9, 8, 12, 8)]);

    private static RunRecord Record
    {
        get
        {
            RunRecord played = TankRun.Play(TankRun.Batch).Record;
            return played with { Ledger = Filtered, Batches = [.. played.Batches.Select(batch => batch with { Passed = Filtered.Lines })] };
        }
    }

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
        Assert.Equal(["LIME", "R101", "TK2", "knife of F1", "over the rim", "sewer", "works"], layout.Nodes.Select(node => node.Name).Order(StringComparer.Ordinal));
        Assert.Equal(["back 900 L"], layout.Bands.Where(band => band.IsReturn).Select(band => band.Words));
        Assert.All(layout.Bands.Where(band => !band.IsReturn), band => Assert.True(band.From.Column < band.To.Column, band.Words));
        foreach (IGrouping<int, FlowNode> column in layout.Nodes.GroupBy(node => node.Column))
        {
            FlowNode[] down = [.. column.OrderBy(node => node.Top)];
            Assert.All(down.Zip(down.Skip(1)), pair => Assert.True(pair.First.Top + pair.First.Height < pair.Second.Top));
        }

        Assert.All(layout.Nodes, node => Assert.All(node.In, band => Assert.InRange(band.ToY, node.Top, node.Top + node.Height)));
    }

    /// <summary>70 batches in a day would let out 336 m3.</summary>
    [Fact]
    public void A_limit_of_a_day_holds_the_day()
    {
        string figures = SiteFigures.Write(Record, TankProgram.Site with { DischargeLimits = [new("out.in_a_day_highest", "most let out in a day", null, 48)] });
        Assert.Contains("A day holds at most 10.0 batches, 59 m3 of water to treat: held by the limit \"most let out in a day\", 48 m3.", figures, StringComparison.Ordinal);
        Assert.Contains("| reagent: LIME | 4.5 L | 450 g | 763 mL | 45 L |", figures, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_finished_batch_nothing_is_said_of_a_day()
    {
        string figures = SiteFigures.Write(Record with { Batches = [] }, TankProgram.Site);
        Assert.Contains("No unit finished a batch, so nothing can be said of a batch or a day.", figures, StringComparison.Ordinal);
        Assert.Contains("so nothing is said of a batch or of a day.", figures, StringComparison.Ordinal);
        Assert.Contains("| water to treat: works | 5000 L | 2 kg |", figures, StringComparison.Ordinal);
        Assert.Contains("| F1 | with its water | 40 kg | - | - |", figures, StringComparison.Ordinal);
    }

    /// <summary>A key is turned by somebody who is needed for it; it is no fault.</summary>
    [Fact]
    public void A_hand_switch_is_told_as_operated()
    {
        NamedFault[] faults = [new("HS1", "operated", FaultKind.Hand), new("P1", "operated", FaultKind.Failure)];
        Assert.Equal("operate HS1", ActionWords.Of(new Deed.Inject("HS1.operated"), faults));
        Assert.Equal("let go of HS1", ActionWords.Of(new Deed.Clear("HS1.operated"), faults));
        Assert.Equal("fault P1.operated", ActionWords.Of(new Deed.Inject("P1.operated"), faults));
        Assert.Equal("fault AT1.frozen", ActionWords.Of(new Deed.Inject("AT1.frozen"), faults));
    }

    [Fact]
    public void A_plant_without_flows_has_an_empty_picture()
    {
        using EmbeddedFont font = new();
        Assert.Contains("where water and solids went", FlowPicture.Svg(Record with { Ledger = PlantLedger.Empty }, "Tank", font), StringComparison.Ordinal);
    }
}
