using System.Diagnostics;
using System.Globalization;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Reports;
using Sequencer.Simulation.Running;
using Sequencer.Testing;
using Sequencer.Text;
using Xunit.Abstractions;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>Every scenario of the demo sites is played, and must come out as it says.</summary>
public sealed class DemoScenarioTests(ITestOutputHelper output, DemoSites sites) : IClassFixture<DemoSites>
{
    public static TheoryData<string, string> Scenarios()
    {
        TheoryData<string, string> scenarios = [];
        foreach (string folder in DemoSites.Folders)
        {
            foreach (string path in Directory.EnumerateFiles(RepositoryPath.Site(folder, "scenarios"), "*.yaml").Order(StringComparer.Ordinal))
            {
                scenarios.Add(folder, Path.GetFileNameWithoutExtension(path));
            }
        }

        return scenarios;
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void A_scenario_of_a_demo_site_comes_out_as_it_says(string folder, string name)
    {
        DemoSite site = sites.Of(folder);
        long before = Stopwatch.GetTimestamp();
        ScenarioResult result = site.Play(name);
        double seconds = Stopwatch.GetElapsedTime(before).TotalSeconds;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{result.Record.Seconds:0} s of plant and {result.Record.Scans} scans in {seconds:0.00} s"));
        string report = BatchReport.Write(result, site.Metadata);
        Keep(folder, name, result, site, report);
        Assert.True(result.Passed, report);
        if (name.StartsWith("normal", StringComparison.Ordinal))
        {
            GoldenFile.Matches(SiteFigures.Write(result.Record, site.Metadata), $"{folder}-figures.verified.md");
        }
    }

    /// <summary>A program that waits for a reading to stay within limits that it hardly keeps to comes out well with one course of noise and not with the next.</summary>
    [Theory]
    [MemberData(nameof(OtherNoise))]
    public void So_do_batches_with_other_noise(string folder, string name, int seed)
    {
        ScenarioResult result = sites.Of(folder).Play(name, seed);
        Assert.True(result.Passed, BatchReport.Write(result, sites.Of(folder).Metadata));
    }

    public static TheoryData<string, string, int> OtherNoise()
    {
        TheoryData<string, string, int> plays = [];
        foreach ((string folder, string name) in new[] { ("fernhollow", "normal-batch"), ("marlpit-wharf", "normal-batch"), ("quillgate", "normal"), ("quillgate", "aborted-batch-treated"), ("sedgemere", "normal-batch") })
        {
            plays.Add(folder, name, 2);
            plays.Add(folder, name, 3);
            plays.Add(folder, name, 4);
        }

        return plays;
    }

    [Fact]
    public void Alarms_with_a_state_are_no_units_of_a_run()
    {
        DemoSite site = sites.Of("sedgemere");
        Assert.Contains(site.System.States, state => state.Variable.Name == "SK430.A1.state");
        Assert.Equal(["TK401", "TK410", "TK420", "SK430", "LN440"], UnitPlaces.Of(site.System).Select(unit => unit.Name));
    }

    /// <summary>KEEP_PICTURES names a folder to look at pictures, records and reports in.</summary>
    private static void Keep(string folder, string name, ScenarioResult result, DemoSite site, string report)
    {
        if (Environment.GetEnvironmentVariable("KEEP_PICTURES") is not string kept)
        {
            return;
        }

        using EmbeddedFont font = new();
        string path = Path.Combine(kept, $"{folder}-{name}");
        File.WriteAllBytes(path + ".png", TrendPicture.Png(result.Record, site.Metadata, font));
        File.WriteAllText(path + ".md", report);
        using StreamWriter writer = new(path + ".csv");
        RunRecordCsv.Write(result.Record, writer);
    }

    [Theory]
    [MemberData(nameof(SiteBlocks))]
    public void A_site_block_of_the_specification_gives_what_its_fence_says(string file, int line)
    {
        SpecBlock block = SpecBlock.All("site-scenario").Single(candidate => candidate.File == file && candidate.Line == line);
        DemoSite site = sites.Of(Assert.Single(block.Words));
        DiagnosticBag diagnostics = new();
        if (Sequencer.Sites.Scenarios.ScenarioReader.Read(new SourceText(file, block.Text), diagnostics) is { } scenario)
        {
            site.Player.Bind(scenario, diagnostics);
        }

        string codes = string.Join(' ', diagnostics.InOrder().Where(diagnostic => diagnostic.Severity == Severity.Error).Select(diagnostic => diagnostic.Code));
        Assert.Equal(block.Expected, codes.Length == 0 ? "clean" : codes);
    }

    public static TheoryData<string, int> SiteBlocks()
    {
        TheoryData<string, int> blocks = [];
        foreach (SpecBlock block in SpecBlock.All("site-scenario"))
        {
            blocks.Add(block.File, block.Line);
        }

        return blocks;
    }
}
