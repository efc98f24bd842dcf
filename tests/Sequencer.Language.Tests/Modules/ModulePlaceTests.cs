using Sequencer.Text;

namespace Sequencer.Language.Tests.Modules;

/// <summary>A message about a line of a module leads to the line and to the equipment that it was read for.</summary>
public sealed class ModulePlaceTests
{
    [Fact]
    public void A_line_that_does_not_fit_leads_to_the_module_and_to_the_equipment()
    {
        Diagnostic told = new ModuleProgram(('L', "level > high", "level > «7 m»"), ('L', ", quantity high)", ")"), ('P', ", high = 5.000 m3", "")).ReportsOnly("SEQ0301");
        Assert.Equal("lib/tank.seqlib:6:38", told.Span.Place);
        RelatedNote note = told.AllNotes.Last();
        Assert.Equal("tank.seq:8:11", note.Span.Place);
        Assert.Equal("read for `L1`, which stands here", note.Message);
        Assert.Contains("  6 |   alarm A1 \"Level high\" when LT1 > 7 m".Replace("A1", "L1_A1", StringComparison.Ordinal), DiagnosticRenderer.Render(told), StringComparison.Ordinal);
    }

    [Fact]
    public void An_argument_that_does_not_fit_leads_to_itself()
    {
        Diagnostic told = new ModuleProgram(('P', "high = 5.000 m3", "high = 5.000 kg"), ('L', "level > high", "level > «high»")).ReportsOnly("SEQ0301");
        RelatedNote note = told.AllNotes.Last();
        Assert.Equal("5.000 kg", note.Span.Text.ToString());
        Assert.Equal("given here, for `L1`", note.Message);
    }

    [Fact]
    public void A_word_handed_on_leads_through_every_module_to_the_argument()
    {
        Diagnostic told = new ModuleProgram(('P', "mixed = YS1)", "mixed = YS9)"), ('L', "blocked unless mixed", "blocked unless «mixed»")).ReportsOnly("SEQ0201");
        Assert.Equal("lib/tank.seqlib:10:58 for LIMING_D (lib/tank.seqlib:14:13)", told.Span.ToString());
        Assert.Equal(
            ["lib/tank.seqlib:14:103 given here, for `LIMING_D`", "tank.seq:10:115 given here, for `LIMING`"],
            told.AllNotes.Where(note => note.Message.StartsWith("given", StringComparison.Ordinal)).Select(note => $"{note.Span.Place} {note.Message}"));
    }

    [Fact]
    public void Two_things_of_one_name_lead_to_both()
    {
        Diagnostic told = new ModuleProgram(('P', "output AG1", "alarm L1_A1 \"Mine\" when YS1\noutput AG1")).Check().Diagnostics.Single(each => each.Code == "SEQ0202");
        Assert.Equal("tank.seq:12:7", told.Span.Place);
        Assert.Equal("lib/tank.seqlib:6:9 for L1 (tank.seq:8:11)", told.AllNotes.Single().Span.ToString());
    }

    [Fact]
    public void Words_of_a_priority_and_of_a_pair_are_no_names_of_the_module()
    {
        ModuleProgram program = new(
            ('L', "on after 5 s", "on after 5 s, priority high, consequence \"Overflow\" response \"Close the inlet\" within 10 min"),
            ('L', "exclusive", "exclusive\n\nmodule Fans(name first, address first_at, name first_runs, name second, address second_at, name second_runs)\n"
                + "  output first motor at first_at \"Fan\" safe stopped, confirm first_runs within 2 s else alarm\n"
                + "  output second motor at second_at \"Fan\" safe stopped, confirm second_runs within 2 s else alarm\n"
                + "  pair P \"Fans\" first, second duty second, changes over within 5 s\n"));
        Assert.Equal("", DiagnosticRenderer.Render(program.Check().Diagnostics));
        Assert.Equal(Language.Programs.AlarmPriority.High, program.Check().Program!.Alarms[0].Response!.Priority);
    }

    [Fact]
    public void Requirements_alarms_and_outputs_know_the_line_they_were_written_on()
    {
        Language.Programs.UnitProgram program = new ModuleProgram().Check().Program!;
        Assert.Equal("lib/tank.seqlib:6:3", program.Alarms[0].Span.Place);
        Assert.Equal("lib/tank.seqlib:9:3 for LIMING_S (lib/tank.seqlib:15:13)", program.Outputs.Single(output => output.Tag == "P2").Span.ToString());
    }
}
