using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Descriptions;

/// <summary>Each mistake in a site's description is told by its code at its place, and by nothing else.</summary>
public sealed class SiteDiagnosticTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("site-").FullName;

    public SiteDiagnosticTests()
    {
        foreach (string file in (string[])["site.yaml", "pit.seq", "plant.yaml"])
        {
            File.Copy(RepositoryPath.Site("one-pit", file), Path.Combine(_folder, file));
        }
    }

    [Fact]
    public void The_site_as_it_stands_has_no_mistakes() => Assert.Empty(SiteCommands.Check(_folder).Diagnostics);

    [Theory]
    [InlineData("SEQ0901", "programs: [pit.seq]", "programs: [pot.seq]", "pot.seq")]
    [InlineData("SEQ0901", "plant: plant.yaml", "plant: plants.yaml", "plants.yaml")]
    [InlineData("SEQ0902", "programs: [pit.seq]", "programs: [../pit.seq]", "../pit.seq")]
    [InlineData("SEQ0902", "plant: plant.yaml", "plant: /plant.yaml", "/plant.yaml")]
    [InlineData("SEQ0905", "text: Acid and caustic meet in the pit, met_by: [H1]", "text: Acid and caustic meet in the pit, met_by: [H1, H99]", "HZ1")]
    [InlineData("SEQ0906", "text: Drains run into a full pit, met_by: [H4]", "text: Drains run into a full pit, met_by: [H4], open: nobody knows", "HZ4")]
    [InlineData("SEQ0909", "low: 6.0}", "}", "{quantity: discharge.pH_lowest, title: lowest pH discharged, }")]
    [InlineData("SEQ0910", "{id: HZ2,", "{id: HZ1,", "HZ1")]
    [InlineData("SEQ0914", "quantity: discharge.pH_lowest", "quantity: discharge.pH_lwest", "discharge.pH_lwest")]
    public void A_mistake_is_told_at_its_place(string code, string sound, string broken, string place, string? beside = null)
    {
        Edit("site.yaml", sound, broken);

        SiteResult result = SiteCommands.Check(_folder);

        Assert.Equal(Outcome.Fails, result.Outcome);
        Diagnostic found = Assert.Single(result.Diagnostics, diagnostic => diagnostic.Code == code);
        Assert.Equal(place, found.Span.Text.ToString());
        if (beside is null)
        {
            Assert.Single(result.Diagnostics);
        }
    }

    [Fact]
    public void A_folder_in_place_of_a_program_is_told()
    {
        File.Delete(Path.Combine(_folder, "pit.seq"));
        Directory.CreateDirectory(Path.Combine(_folder, "pit.seq"));

        Assert.Equal("SEQ0903", Assert.Single(SiteCommands.Check(_folder).Diagnostics).Code);
    }

    [Fact]
    public void A_requirement_that_belongs_to_no_hazard_is_a_warning()
    {
        Edit("site.yaml", "met_by: [H12]", "open: for the hazard study");

        SiteResult result = SiteCommands.Check(_folder);

        Assert.Equal(Outcome.Holds, result.Outcome);
        Assert.Equal("SEQ0907", Assert.Single(result.Diagnostics).Code);
    }

    [Fact]
    public void Two_programs_with_a_unit_of_one_name_are_told_at_the_second()
    {
        string press = File.ReadAllText(RepositoryPath.Site("sludge-house", "press.seq"));
        File.WriteAllText(Path.Combine(_folder, "other.seq"), press.Replace("FP01", "TK301", StringComparison.Ordinal).Replace(" at %IW", " at %IW9", StringComparison.Ordinal).Replace("X0.", "X90.", StringComparison.Ordinal));
        Edit("site.yaml", "programs: [pit.seq]", "programs: [pit.seq, other.seq]");

        Diagnostic found = Assert.Single(SiteCommands.Check(_folder).Diagnostics, diagnostic => diagnostic.Code == "SEQ0908");
        Assert.Equal(("unit TK301 \"Filter press\"", true), (found.Span.Text.ToString(), found.Span.Source.Path.EndsWith("other.seq", StringComparison.Ordinal)));
    }

    /// <summary>Signs and capitals do not tell folders apart.</summary>
    [Fact]
    public void Two_scenarios_of_one_name_are_told_at_the_second()
    {
        string scenarios = Directory.CreateDirectory(Path.Combine(_folder, "scenarios")).FullName;
        File.WriteAllText(Path.Combine(scenarios, "a.yaml"), "scenario: 1\nname: first day\nlasts: 1 h\n");
        File.WriteAllText(Path.Combine(scenarios, "b.yaml"), "scenario: 1\nname: First-Day\nlasts: 1 h\n");

        Diagnostic found = Assert.Single(SiteCommands.Check(_folder).Diagnostics, diagnostic => diagnostic.Code == "SEQ0912");
        Assert.Equal(("First-Day", true), (found.Span.Text.ToString(), found.Span.Source.Path.EndsWith("b.yaml", StringComparison.Ordinal)));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Edit(string file, string sound, string broken)
    {
        string path = Path.Combine(_folder, file);
        string text = File.ReadAllText(path);
        Assert.Contains(sound, text, StringComparison.Ordinal);
        int place = text.IndexOf(sound, StringComparison.Ordinal);
        File.WriteAllText(path, string.Concat(text.AsSpan(0, place), broken, text.AsSpan(place + sound.Length)));
    }
}
