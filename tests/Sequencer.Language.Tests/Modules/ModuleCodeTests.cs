using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Modules;

/// <summary>Each mistake with libraries, modules and equipment is told once, with its code, at its exact place.</summary>
public sealed class ModuleCodeTests
{
    [Fact]
    public void The_program_that_is_spoilt_here_is_sound()
    {
        CheckResult result = new ModuleProgram().Check();
        Assert.True(result.Diagnostics.IsEmpty, DiagnosticRenderer.Render(result.Diagnostics));
        Assert.Equal(["L1_A1"], result.Program!.Alarms.Select(alarm => alarm.Name));
        Assert.Equal(["LIMING_D_I1", "LIMING_S_I1"], result.Program.Interlocks.Select(interlock => interlock.Name));
        Assert.Equal(["LIMING_I1"], result.Program.Exclusions.Select(exclusion => exclusion.Name));
        Assert.Equal(["LIMING_D_H1", "LIMING_S_H1"], result.Program.Requirements.Select(requirement => requirement.Name));
    }

    [Theory]
    [InlineData("SEQ0125", 'P', "use \"lib", "«library 1»\nuse \"lib")]
    [InlineData("SEQ0125", 'P', "procedure", "«module Spare()»\n\nprocedure")]
    [InlineData("SEQ0140", 'L', "library 1", "library «2»")]
    [InlineData("SEQ0141", 'L', "library 1", "library 1\n«alarm A9 \"High\" when LT1 > 5.000 m3»")]
    [InlineData("SEQ0142", 'L', "  alarm A1", "  «start only when level < high \"Full\"»\n  alarm A1")]
    [InlineData("SEQ0142", 'L', "  alarm A1", "  «use \"lib/other.seqlib\"»\n  alarm A1")]
    [InlineData("SEQ0202", 'P', "equipment LIMING is", "equipment «L1» is")]
    [InlineData("SEQ0202", 'P', "equipment LIMING is", "equipment «YS1» is")]
    [InlineData("SEQ0203", 'P', "equipment LIMING is", "equipment «l1» is")]
    [InlineData("SEQ0206", 'P', "run AG1", "run «LIMING»")]
    [InlineData("SEQ0260", 'P', "is Level(", "is «Levle»(")]
    [InlineData("SEQ0260", 'L', "D is Pump(", "D is «Pomp»(")]
    [InlineData("SEQ0261", 'P', "equipment L1 is Level(level = LT1, level_at = %IW0,", "equipment «L1» is Level(level = LT1,")]
    [InlineData("SEQ0262", 'P', "bottom = 0,", "bottom = 0, «bottom» = 1,")]
    [InlineData("SEQ0262", 'L', "number bottom,", "number bottom, name «bottom»,")]
    [InlineData("SEQ0263", 'P', "bottom = 0,", "bottom = 0, «low» = 1.000 m3,")]
    [InlineData("SEQ0264", 'P', "level = LT1,", "«level = 3 m»,")]
    [InlineData("SEQ0264", 'P', "level_at = %IW0,", "«level_at = IW0»,")]
    [InlineData("SEQ0264", 'P', "title = \"Tank volume\",", "«title = Volume»,")]
    [InlineData("SEQ0264", 'P', "filter = 2 s,", "«filter = 2»,")]
    [InlineData("SEQ0264", 'P', "bottom = 0,", "«bottom = 0 m3»,")]
    [InlineData("SEQ0265", 'L', "\n  require H1", "\n  equipment M is «Pump»(pump = pump, pump_at = pump_at, chemical = chemical, rate = rate, mixed = mixed)\n  require H1")]
    [InlineData("SEQ0266", 'L', "module Pump(", "module «Level»(name level)\n  alarm A2 \"Not empty\" when level > 0.100 m3\n\nmodule Pump(")]
    [InlineData("SEQ0267", 'L', "level > high", "level > high and not «YS1»")]
    [InlineData("SEQ0267", 'L', "level > high", "«levle» > high")]
    [InlineData("SEQ0270", 'L', "pump blocked unless mixed\n  require H1 \"Unmixed dosing\" never pump and not mixed", "pump blocked while pump.total > 3 L\n  require H1 \"Too much\" never pump.total > 4 L", "name mixed)", "name «mixed»)")]
    [InlineData("SEQ0271", 'P', "use \"lib/tank.seqlib\"", "use \"lib/tank.seqlib\"\nuse «\"lib/tank.seqlib\"»")]
    public void A_mistake_is_told_once_at_its_exact_place(string code, char file, string old, string with, string? alsoOld = null, string? alsoWith = null) =>
        (alsoOld is null ? new ModuleProgram((file, old, with)) : new ModuleProgram((file, alsoOld, alsoWith!), (file, old, with))).ReportsOnly(code);

    [Fact]
    public void A_library_of_which_nothing_is_made_is_told() =>
        new ModuleProgram(('P', "use \"lib/tank.seqlib\"", "use \"lib/tank.seqlib\"\nuse «\"lib/spare.seqlib\"»"))
            .With("lib/spare.seqlib", "library 1\n\nmodule Spare()\n  reagent WATER\n").ReportsOnly("SEQ0271");

    [Fact]
    public void A_library_that_uses_another_in_vain_is_told()
    {
        ModuleProgram program = new ModuleProgram(('L', "library 1\n", "library 1\nuse «\"lib/spare.seqlib\"»\n"))
            .With("lib/spare.seqlib", "library 1\nuse \"lib/tank.seqlib\"\n\nmodule Spare(name x)\n  equipment L is Pump(pump = x, pump_at = %QX9.0, chemical = x, rate = 1 L/h, mixed = x)\n");
        program.ReportsOnly("SEQ0271");
    }

    [Fact]
    public void Two_libraries_with_a_module_of_one_name_are_told()
    {
        ModuleProgram program = new ModuleProgram(('P', "use \"lib/tank.seqlib\"", "use \"lib/tank.seqlib\"\nuse \"lib/other.seqlib\""))
            .With("lib/other.seqlib", "library 1\n\nmodule Level(name level)\n  alarm A2 \"Not empty\" when level > 0.100 m3\n");
        Diagnostic told = Assert.Single(program.Check().Diagnostics);
        Assert.Equal("SEQ0266", told.Code);
        Assert.Equal("lib/other.seqlib:3:8", told.Span.Place);
        Assert.Equal("lib/tank.seqlib:4:8", Assert.Single(told.AllNotes).Span.Place);
    }

    [Fact]
    public void Modules_may_stand_in_modules_to_a_depth_that_is_told()
    {
        string deep = string.Concat(Enumerable.Range(1, 9).Select(level => $"\nmodule M{level}(name x)\n  equipment M is M{level - 1}(x = x)\n"));
        string library = "library 1\n\nmodule M0(name x)\n  alarm A1 \"Running\" when x\n" + deep;
        string Program(int level) => $"language 1\nunit T1 \"Tank\"\nuse \"l\"\nequipment E is M{level}(x = P1)\noutput P1 motor at %QX0.0 \"Pump\" safe stopped\n"
            + "procedure\n step 10 \"Run\"\n  run P1\n  limit 10 min then hold \"Slow\"\n  go finish when at step 10 stays 10 s\n";
        SourceText? Read(string file, SourceSpan named, DiagnosticBag diagnostics) => new("l", library);

        Assert.Empty(ProgramChecker.Check(new SourceText("p.seq", Program(7)), 100, libraries: Read).Diagnostics);
        Diagnostic told = Assert.Single(ProgramChecker.Check(new SourceText("p.seq", Program(8)), 100, libraries: Read).Diagnostics);
        Assert.Equal("SEQ0268", told.Code);
        Assert.Equal(8, told.AllNotes.Count());
    }

    [Fact]
    public void Modules_that_multiply_are_stopped_before_they_fill_the_memory()
    {
        string line = string.Concat(Enumerable.Range(0, 60).Select(count => $"  equipment E{count} is MODULE(x = x)\n"));
        string library = $"library 1\n\nmodule M0(name x)\n  alarm A1 \"{new string('n', 7000)}\" when x\n"
            + string.Concat(Enumerable.Range(1, 7).Select(level => $"\nmodule M{level}(name x)\n" + line.Replace("MODULE", $"M{level - 1}", StringComparison.Ordinal)));
        SourceText program = new("p.seq", "language 1\nunit T1 \"Tank\"\nuse \"l\"\nequipment E is M7(x = P1)\noutput P1 motor at %QX0.0 \"Pump\" safe stopped\nprocedure\n");
        Assert.Contains(ProgramChecker.Check(program, 100, libraries: (_, _, _) => new("l", library)).Diagnostics, told => told.Code == "SEQ0268");
    }

    [Fact]
    public void Nothing_more_is_said_of_a_program_by_itself_than_that_its_library_is_not_there() =>
        Assert.Equal(["SEQ0269"], ProgramChecker.Check(new ModuleProgram().Text, 100).Diagnostics.Select(told => told.Code));

    [Fact]
    public void A_module_that_cannot_be_read_is_told_once_although_it_is_used_twice() =>
        new ModuleProgram(('L', "interlock I1 \"Dosing needs mixing\" pump blocked unless mixed", "interlock I1 \"Dosing needs mixing\" pump blocked «unles» mixed")).ReportsOnly("SEQ0110");

    [Fact]
    public void A_malformed_head_hides_its_module_but_not_the_next() =>
        new ModuleProgram(('L', "module Level(name level,", "module Level(«nmae» level,")).ReportsOnly("SEQ0110");
}
