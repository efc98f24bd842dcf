namespace Sequencer.Cli.Tests;

/// <summary>A site whose program makes its dosing pump from a module of a library.</summary>
public sealed class LibraryTests
{
    private const string Library = """
        library 1

        --| A dosing pump that runs only into mixed liquid, under a live reading.
        module DosingPump(name pump, address pump_at, name chemical, quantity rate, quantity maximum, name mixed, name reading)
          output pump  motor  at pump_at  "Dosing pump"  safe stopped, delivers chemical at rate
          interlock I1 "Dosing needs mixing" pump blocked unless mixed and reading usable
          require H1 "Unmixed dosing"     never pump and not mixed
          require H2 "Too much in a batch"  never pump.total > maximum

        """;

    [Fact]
    public void A_site_with_a_library_checks_exports_and_is_laid_out()
    {
        using ScratchSite site = WithLibrary();
        ToolRun check = ToolRun.Of("check", site.Folder);
        Assert.True(check.ExitCode == 0, check.Everything);

        string results = site.Beside("out");
        ToolRun export = ToolRun.Of("export", site.Folder, "--out", results);
        Assert.True(export.ExitCode == 0, export.Everything);
        string text = string.Concat(Directory.EnumerateFiles(results, "*.st", SearchOption.AllDirectories).Select(File.ReadAllText));
        Assert.Matches(@"dosing\.seqlib for CAUSTIC_DOSING: [^*]*\b6 CAUSTIC_DOSING_I1", text.Replace(" *)\n(* ", " ", StringComparison.Ordinal));
        Assert.Contains("CAUSTIC_DOSING_I1", text, StringComparison.Ordinal);

        ToolRun layout = ToolRun.Of("format", site.Folder);
        Assert.True(layout.ExitCode == 0, layout.Everything);
        Assert.Contains("laid out: " + site.Folder + "/lib/dosing.seqlib\n", layout.Output, StringComparison.Ordinal);
        Assert.Contains("  require H1 \"Unmixed dosing\"       never", File.ReadAllText(site.At("lib/dosing.seqlib")), StringComparison.Ordinal);
        Assert.Equal(0, ToolRun.Of("format", site.Folder, "--check").ExitCode);
    }

    [Theory]
    [InlineData("../dosing.seqlib", "SEQ0902")]
    [InlineData("lib/dosing-pumps.seqlib", "SEQ0901")]
    public void A_library_outside_the_folder_or_not_there_is_refused_at_the_line_that_asks_for_it(string file, string code)
    {
        using ScratchSite site = WithLibrary();
        File.WriteAllText(site.Beside("dosing.seqlib"), Library);
        site.Replace("program.seq", "lib/dosing.seqlib", file);
        ToolRun check = ToolRun.Of("check", site.Folder);
        Assert.Equal(1, check.ExitCode);
        Assert.Contains($"program.seq:5:5: error {code}", check.Output, StringComparison.Ordinal);
        Assert.Single(check.Output.Split('\n'), line => line.Contains("error SEQ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_link_that_leads_out_of_the_folder_is_refused()
    {
        using ScratchSite site = WithLibrary();
        File.WriteAllText(site.Beside("dosing.seqlib"), Library);
        File.Delete(site.At("lib/dosing.seqlib"));
        File.CreateSymbolicLink(site.At("lib/dosing.seqlib"), site.Beside("dosing.seqlib"));
        ToolRun check = ToolRun.Of("check", site.Folder);
        Assert.Equal(1, check.ExitCode);
        Assert.Contains("program.seq:5:5: error SEQ0902", check.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mistake_in_a_module_is_told_with_both_places()
    {
        using ScratchSite site = WithLibrary();
        site.Replace("program.seq", "rate = 0.20 L/min", "rate = 0.20 kg");
        ToolRun check = ToolRun.Of("check", site.Folder);
        Assert.Equal(1, check.ExitCode);
        Assert.Contains("lib/dosing.seqlib:5:85: error SEQ0303", check.Output, StringComparison.Ordinal);
        Assert.Contains("given here, for `CAUSTIC_DOSING`", check.Output, StringComparison.Ordinal);
    }

    private static ScratchSite WithLibrary()
    {
        ScratchSite site = new();
        Directory.CreateDirectory(site.At("lib"));
        return site
            .Write("lib/dosing.seqlib", Library)
            .Replace("program.seq", "output P1   motor  at %QX0.2  \"Caustic pump\"  safe stopped  delivers CAUSTIC at 0.20 L/min\n", "")
            .Replace("program.seq", "interlock I2 \"Dosing needs mixing\"  P1   blocked unless YS1 and AT1 usable\n", "")
            .Replace("program.seq", "require H2 \"Unmixed dosing\"      never P1 and not YS1\n", "")
            .Replace("program.seq", "require H4 \"Too much caustic\"    never P1.total > 5 L\n", "")
            .Replace("program.seq", "-- signals", "use \"lib/dosing.seqlib\"\n\n-- signals")
            .Replace("program.seq", "reagent CAUSTIC", """
                equipment CAUSTIC_DOSING is DosingPump(
                    pump = P1, pump_at = %QX0.2, chemical = CAUSTIC, rate = 0.20 L/min, maximum = 5 L, mixed = YS1, reading = AT1)

                reagent CAUSTIC
                """)
            .Replace("site.yaml", "met_by: [H2]", "met_by: [CAUSTIC_DOSING_H1]")
            .Replace("site.yaml", "met_by: [H4]", "met_by: [CAUSTIC_DOSING_H2]");
    }
}
