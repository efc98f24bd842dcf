using Sequencer.Sites.Stages;
using Sequencer.Sites.Tests.Recipes;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>A scenario plays on the plant with the values that it changes, checked as the plant's description is.</summary>
public sealed class ChangedPlantTests
{
    private const string Head = "# scenarios/changed.yaml\nscenario: 1\nname: changed\nlasts: 1 min\nplant:\n  ";
    private const string Tail = "\nactions:\n  - {at: 1 s, press: TK301.start}\nexpect:\n  - {value: TK301.volume, at_least: 0.1 m3, judged: at_end}\n";

    [Theory]
    [InlineData("reagents.CAUSTC.dissolved.sodium: 2 mol/L", "SEQ0831", "reagents.CAUSTC.dissolved.sodium", "did you mean `reagents.CAUSTIC`?")]
    [InlineData("tanks.TK301.starts.volum: 0.1 m3", "SEQ0805", "tanks.TK301.starts.volum", "did you mean `volume`?")]
    [InlineData("tanks.TK301.starts.volume: 0.1 L/h", "SEQ0810", "0.1 L/h", "write one of: L, l, mL, m3")]
    [InlineData("tanks.TK301.starts.volume: -0.1 m3", "SEQ0808", "-0.1 m3", null)]
    [InlineData("tanks.TK301: 0.1 m3", "SEQ0807", "0.1 m3", "write a group of keys")]
    public void A_mistake_is_reported_where_the_scenario_has_it(string change, string code, string marked, string? mend)
    {
        using SiteWithFiles site = new SiteWithFiles("one-pit").With(Head + change + Tail);
        Diagnostic found = SiteCommands.Check(site.Folder).Diagnostics.First(diagnostic => diagnostic.Code == code);
        Assert.Equal((code, marked), (found.Code, found.Span.Text.ToString()));
        Assert.EndsWith("scenarios/changed.yaml", found.Span.Source.Path, StringComparison.Ordinal);
        Assert.Contains(mend ?? "", found.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ambient: 18 C", false)]
    [InlineData("tanks.TK301.starts.volume: 0.2 m3", true)]
    [InlineData("transmitters.TT301.offset: 5 C\n  tanks.TK301.starts.volume: 0.2 m3", true, "TT301, at_least: 16 C, at_most: 19 C")]
    [InlineData("tanks.TK301.starts.volume: 0.2 m3", false, "TT301, at_least: 16 C, at_most: 19 C")]
    public void The_run_is_that_of_the_changed_plant(string change, bool asExpected, string expected = "TK301.volume, at_least: 0.1 m3")
    {
        using SiteWithFiles site = new SiteWithFiles("one-pit").With(Head + change + Tail.Replace("TK301.volume, at_least: 0.1 m3", expected, StringComparison.Ordinal));
        SiteResult result = SiteCommands.Simulate(site.Folder, site.At("results"), null, new Progress<StageProgress>(), CancellationToken.None);
        Assert.True((result.Outcome == Outcome.Holds) == asExpected, result.Text);
    }
}
