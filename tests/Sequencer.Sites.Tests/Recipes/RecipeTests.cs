using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Recipes;

/// <summary>Recipes are checked against the programs, whole, and a scenario is played with the one that it names.</summary>
public sealed class RecipeTests
{
    private const string Sound = """
        # recipes/narrow.yaml
        recipe: 1
        name: narrow window
        purpose: Near neutral.
        values:
          TK301:
            low_pH: 7.20 pH
            high_pH: 8.00 pH
        # scenarios/narrow.yaml
        scenario: 1
        name: narrow batch
        lasts: 30 s
        recipe: narrow window
        actions:
          - {at: 1 s, press: TK301.start}
        expect:
          - {unit: TK301, reaches: Running, before: 10 s}
          - {value: TK301.low_pH.batch, at_least: 7.20 pH, at_most: 7.20 pH, judged: at_end}
          - {value: TK301.high_pH.batch, at_least: 8.00 pH, at_most: 8.00 pH, judged: at_end}
        # scenarios/plain.yaml
        scenario: 1
        name: plain batch
        lasts: 30 s
        actions:
          - {at: 1 s, press: TK301.start}
        expect:
          - {value: TK301.low_pH.batch, at_least: 7.00 pH, at_most: 7.00 pH, judged: at_end}
        """;

    [Theory]
    [InlineData("SEQ0280", "  TK301:\n    low", "  TK302:\n    low", "TK302", "did you mean `TK301`?")]
    [InlineData("SEQ0281", "    low_pH", "    low_hP", "low_hP", "did you mean `low_pH`?")]
    [InlineData("SEQ0282", "low_pH: 7.20 pH", "low_pH: 7.20 L", "7.20 L", "write the value in `pH`")]
    [InlineData("SEQ0282", "low_pH: 7.20 pH", "low_pH: 7.20", "7.20", "write the value in `pH`")]
    [InlineData("SEQ0283", "low_pH: 7.20 pH", "low_pH: 7.51 pH", "7.51 pH", "write a value from `6.50 pH` to `7.50 pH`, or widen the range in the program and prove it again")]
    [InlineData("SEQ0283", "low_pH: 7.20 pH", "low_pH: 6.49 pH", "6.49 pH", null)]
    [InlineData("SEQ0284", "low_pH: 7.20 pH", "low_pH: 7.205 pH", "7.205 pH", "round the value to a whole number of `0.01 pH`")]
    [InlineData("SEQ0286", "recipe: narrow window\nactions", "recipe: narow window\nactions", "narow window", "did you mean `narrow window`?")]
    [InlineData("SEQ0621", "low_pH: 7.20 pH", "low_pH: seven pH", "seven pH", null)]
    [InlineData("SEQ0804", "    high_pH: 8.00 pH", "    low_pH: 7.30 pH", "low_pH", null)]
    [InlineData("SEQ0805", "purpose:", "purposes:", "purposes", null)]
    [InlineData("SEQ0806", "recipe: 1\nname", "name", "name", null)]
    public void A_mistake_is_told_once_at_its_place(string code, string sound, string broken, string place, string? mend)
    {
        Assert.Contains(sound, Sound, StringComparison.Ordinal);
        using SiteWithFiles site = new SiteWithFiles("one-pit").With(Sound.Replace(sound, broken, StringComparison.Ordinal));
        SiteResult result = SiteCommands.Check(site.Folder);
        string shown = DiagnosticRenderer.Render(result.Diagnostics);
        Assert.True(result.Diagnostics.Length == 1 && result.Diagnostics[0].Code == code, shown);
        Assert.Equal(place, result.Diagnostics[0].Span.Text.ToString());
        Assert.True(mend is null || mend == result.Diagnostics[0].Mend, shown);
    }

    [Fact]
    public void The_ends_of_the_range_are_in_it()
    {
        using SiteWithFiles site = new SiteWithFiles("one-pit").With(Sound.Replace("low_pH: 7.20 pH", "low_pH: 6.50 pH", StringComparison.Ordinal).Replace("high_pH: 8.00 pH", "high_pH: 8.80 pH", StringComparison.Ordinal));
        Assert.Empty(SiteCommands.Check(site.Folder).Diagnostics);
    }

    [Fact]
    public void Another_unit_of_the_same_kind_is_converted_exactly()
    {
        using SiteWithFiles site = new SiteWithFiles("marlpit-wharf").With("# recipes/litres.yaml\nrecipe: 1\nname: litres\nvalues: {TK201: {fill_volume: 9500 L}}\n");
        SiteResult result = SiteCommands.Check(site.Folder);
        Assert.True(result.Diagnostics.IsEmpty, DiagnosticRenderer.Render(result.Diagnostics));
        Assert.Contains("1 recipe in range: litres", result.Text, StringComparison.Ordinal);
        File.WriteAllText(site.At("recipes/litres.yaml"), "recipe: 1\nname: litres\nvalues: {TK201: {fill_volume: 9500.5 L}}\n");
        Assert.Equal("SEQ0284", Assert.Single(SiteCommands.Check(site.Folder).Diagnostics).Code);
    }

    [Fact]
    public void A_scenario_is_played_with_its_recipe_and_the_others_with_the_defaults()
    {
        using SiteWithFiles site = new SiteWithFiles("one-pit").With(Sound);
        using SiteWithFiles results = new("one-pit");
        string output = results.At("out");
        SiteResult result = SiteCommands.Simulate(site.Folder, output, null, new Progress<StageProgress>(), CancellationToken.None);
        Assert.True(result.Outcome == Outcome.Holds, result.Text);
        Assert.Contains("as expected  narrow batch, recipe narrow window, 30 s", result.Text, StringComparison.Ordinal);
        Assert.Contains("as expected  plain batch, 30 s", result.Text, StringComparison.Ordinal);
        Assert.Contains("| recipe | narrow window |", File.ReadAllText(Path.Combine(output, "batch-report.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_operator_sets_comes_after_the_recipe()
    {
        using SiteWithFiles site = new SiteWithFiles("one-pit").With(Sound
            .Replace("recipe: narrow window\nactions", "recipe: narrow window\nsettings: {TK301.low_pH: 7.40 pH}\nactions", StringComparison.Ordinal)
            .Replace("at_least: 7.20 pH, at_most: 7.20 pH", "at_least: 7.40 pH, at_most: 7.40 pH", StringComparison.Ordinal));
        SiteResult result = SiteCommands.Simulate(site.Folder, site.At("out"), "narrow batch", new Progress<StageProgress>(), CancellationToken.None);
        Assert.True(result.Outcome == Outcome.Holds, result.Text);
    }
}
