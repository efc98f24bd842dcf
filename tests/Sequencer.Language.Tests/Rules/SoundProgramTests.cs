using Sequencer.Language.Checking;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Rules;

/// <summary>Programs that look like a mistake to a hasty rule, and are none.</summary>
public sealed class SoundProgramTests
{
    [Fact]
    public void The_sites_of_this_repository_have_no_mistake()
    {
        string[] sites = Directory.GetDirectories(RepositoryPath.At("sequences"));

        Assert.True(sites.Length >= 3, "too few sites were seen");
        Assert.All(sites, site =>
        {
            SourceText Read(string name) => new(name, File.ReadAllText(Path.Combine(site, name)));
            SourceText[] programs = [.. Directory.GetFiles(site, "*.seq").Select(path => Read(Path.GetFileName(path)))];
            SiteCheckResult result = SiteChecker.Check(programs, 100, libraries: (name, _, _) => Read(name));
            Assert.Equal("", DiagnosticRenderer.Render(result.Diagnostics));
        });
    }

    [Fact]
    public void A_threshold_that_the_step_never_meets_needs_no_release_band() => RuleProgram.IsSilentOn(Tank(
        "interlock I1 \"Overfill\" XV1 blocked while LT1 > 0.900 m3",
        "    go finish when LT1 >= 0.800 m3"));

    [Fact]
    public void A_threshold_after_an_until_needs_no_release_band() => RuleProgram.IsSilentOn(Tank(
        "interlock I1 \"Overfill\" XV1 blocked while LT1 > 0.900 m3",
        "    go finish when at step 10 stays 10 min",
        "open XV1 until LT1 >= 0.800 m3"));

    [Fact]
    public void A_threshold_that_has_to_last_needs_no_release_band() => RuleProgram.IsSilentOn(Tank(
        "interlock I1 \"Overfill\" XV1 blocked while (LT1 > 0.700 m3 stays 10 s)",
        "    go finish when LT1 >= 0.800 m3"));

    [Fact]
    public void A_counted_circle_with_one_limit_that_holds_has_an_end() => RuleProgram.IsSilentOn(Tank(
        "",
        """
            go 20 when LT1 >= 0.800 m3

          step 20 "Settle"
            limit 30 min then go 10 "Still moving"
            go 10 when LT1 < 0.500 m3, at most 3 times then hold "It leaks"
            go finish when at step 20 stays 5 min
        """));

    [Fact]
    public void Alternatives_that_overlap_but_differ_can_all_be_taken() => RuleProgram.IsSilentOn(Tank(
        "",
        """
            go 20 when LT1 >= 0.800 m3 and XV1
            go finish when LT1 >= 0.700 m3

          step 20 "Settle"
            limit 30 min then hold "Still moving"
            go finish when at step 20 stays 5 min
        """));

    [Fact]
    public void Conditions_that_exclude_each_other_may_drive_one_output_both_ways() => RuleProgram.IsSilentOn(Tank(
        "",
        "    close XV1 while LT1 >= 0.700 m3\n    go finish when LT1 >= 0.800 m3",
        "open XV1 while LT1 < 0.700 m3"));

    [Fact]
    public void A_parameter_whose_whole_range_leaves_the_way_open_is_no_contradiction() => RuleProgram.IsSilentOn(Tank(
        "parameter full = 0.800 m3 from 0.500 m3 to 0.900 m3",
        "    go finish when LT1 >= full and LT1 < 0.950 m3"));

    [Fact]
    public void A_trip_with_an_alarm_that_an_interlock_reads_is_a_protection() => RuleProgram.IsSilentOn(Tank(
        """
        input LSHH1 switch normally closed at %IX0.3 "Tank at high-high"
        trip T9 "Tank at high-high" when LSHH1 then alarm
        interlock I1 "Overfill" XV1 blocked while T9 latched
        """,
        "    go finish when LT1 >= 0.800 m3"));

    [Fact]
    public void A_switch_of_position_or_of_running_may_be_normally_open() => RuleProgram.IsSilentOn(Tank(
        """
        input ZSO2 switch at %IX0.1 "Outlet open"
        input SHOWER1 switch at %IX0.2 "Shower in use"
        interlock I1 "Not while the outlet is open" XV1 blocked while ZSO2 or SHOWER1
        """,
        "    go finish when LT1 >= 0.800 m3"));

    private static string Tank(string declarations, string exits, string drive = "open XV1") => $"""
        language 1
        unit TK1 "Tank"
        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        {declarations}
        procedure
          step 10 "Fill"
            {drive}
            limit 30 min then hold "Filling slow"
        {exits}
        """;
}
