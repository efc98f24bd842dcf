using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Tests.Writing;
using Sequencer.Export.Wiring;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Wiring;

/// <summary>The program around the blocks, as we write it and changed by one slip of the hand.</summary>
public sealed class WiringCheckTests
{
    private const string Valve = """
        language 1
        unit A "Tank"
        input  LT1  -50 .. 950 mV  at %IW4  "Redox"  bad after 0.3 s
        input  S1  switch normally closed  at %IX0.0  "Switch"
        output XV1  valve  at %QX0.0  "Vent"  safe open  de-energised open
        output SC1  10.0 .. 60.0 %  at %QW0  "Speed"  safe 10.0 %, rate at most 1.0 % in 1 s
        procedure
          step 10 "Rest"
            close XV1
            set SC1 to 35.0 %
            limit 10 s then hold "Too long"
            go finish when S1 and LT1 > 100 mV

        """;

    private static readonly StructuredTextExport Two = SiteExport.Whole(SiteExport.First, SiteExport.Second);
    private static readonly StructuredTextExport One = SiteExport.Whole(Valve);

    [Fact]
    public void What_we_write_is_wired_as_declared()
    {
        Assert.Equal(new WiredAsDeclared(6, Two.Wiring.Operated.Length, 65_536), Decide(Two, Two.Text));
        Assert.Equal(new WiredAsDeclared(4, One.Wiring.Operated.Length, 65_536), Decide(One, One.Text));
        Assert.NotEmpty(One.Wiring.Operated);
    }

    [Theory]
    [InlineData("DI_S1 AT %IX0.0", "DI_S1 AT %IX0.7", "`S1.contact` (program1.seq:4:1): it is read from %IX0.7; its address is %IX0.0")]
    [InlineData("S1_Contact := DI_S1", "S1_Contact := NOT DI_S1", "the text does not take the contact at %IX0.0 as it is")]
    [InlineData("S1_Contact := DI_S1", "S1_Contact := DI_S2", "it is read from %IX1.0; its address is %IX0.0")]
    [InlineData("S1_Contact := DI_S1", "S1_Contact := TRUE", "it is not read from its address %IX0.0")]
    [InlineData("DO_P1 := All_Units.P1", "DO_P1 := NOT All_Units.P1", "`P1` (program1.seq:5:1): it is off without power, so its coil at %QX0.0 is driven when it is on; the text drives it when it is off")]
    [InlineData("DO_P1 := All_Units.P1", "DO_P1 := All_Units.P2", "what stands at %QX0.0 is driven by `P2`")]
    [InlineData("DO_P1 := All_Units.P1", "DO_P1 := All_Units.P1 AND DI_S2", "`P1 at %QX0.0`: a run was found")]
    [InlineData("DO_P1 AT %QX0.0", "DO_P1 AT %QX0.6", "nothing is written to %QX0.0")]
    [InlineData("DO_P1 AT %QX0.0", "DO_P1 AT %QX0.6", "`DO_P1` is written to %QX0.6, where the site has no signal")]
    [InlineData("Low := 0, High := 500", "Low := 0, High := 400", "`LT1` (program1.seq:3:1): at 4016 microamperes the text reads 0; with 0 at 4 mA and 500 at 20 mA it is 1")]
    [InlineData("+ 8000) / 16000", "+ 7999) / 16000", "at 4016 microamperes the text reads 0; with 0 at 4 mA and 500 at 20 mA it is 1")]
    [InlineData("<= 3600", "< 3600", "at 3600 microamperes, sound before, its loop is failed by NAMUR NE 43; the text takes it for sound")]
    [InlineData("(Microamperes <= 20500)", "(Microamperes <= 20600)", "at 20501 microamperes, failed before, its loop is failed by NAMUR NE 43; the text takes it for sound")]
    [InlineData("Fault : BOOL := TRUE", "Fault : BOOL := FALSE", "a loop has failed until it has been seen sound")]
    [InlineData("LT1_Fault := LT1_Loop.Fault", "LT1_Fault := FALSE", "whether its loop has failed is not judged by what is at %IW0 alone")]
    [InlineData("Setting := All_Units.SC1, Low := 100", "Setting := All_Units.SC1, Low := 0", "`SC1 at %QW0`: a run was found")]
    [InlineData("INTERVAL := T#100ms", "INTERVAL := T#50ms", "the task calls the program every 50 ms; a scan of the programs is 100 ms")]
    [InlineData("A_Start := A_Start", "A_Start := A_Stop", "`A.start` is to be what the operator's station writes to A_Start, and is `A_Stop`")]
    public void A_slip_is_found_and_named(string words, string others, string told)
    {
        WiredOtherwise found = Assert.IsType<WiredOtherwise>(Decide(Two, Changed(Two, words, others)));
        Assert.Contains(found.Faults, fault => fault.Contains(told, StringComparison.Ordinal));
    }

    /// <summary>A station's variable may have been given another name; that it goes to one input only is asked all the same.</summary>
    [Fact]
    public void A_renamed_variable_that_goes_to_two_inputs_is_found()
    {
        int program = Two.Text.IndexOf("PROGRAM PLANT_PROGRAM", StringComparison.Ordinal);
        string renamed = Two.Text[program..].Replace("A_Start : BOOL", "Go : BOOL", StringComparison.Ordinal).Replace("A_Start := A_Start", "A_Start := Go", StringComparison.Ordinal);
        Assert.IsType<WiredAsDeclared>(Decide(Two, Two.Text[..program] + renamed));
        string both = Two.Text[..program] + renamed.Replace("B_Start : BOOL", "Other : BOOL", StringComparison.Ordinal).Replace("B_Start := B_Start", "B_Start := Go", StringComparison.Ordinal);
        WiredOtherwise found = Assert.IsType<WiredOtherwise>(Decide(Two, both));
        Assert.Contains("`Go` of the operator's station goes to more than one input: `A.start`, `B.start`", found.Faults);
    }

    [Fact]
    public void A_device_that_is_on_without_power_has_its_coil_turned_over()
    {
        WiredOtherwise found = Assert.IsType<WiredOtherwise>(Decide(One, Changed(One, "DO_XV1 := NOT A.XV1", "DO_XV1 := A.XV1")));
        Assert.EndsWith("its coil at %QX0.0 is driven when it is off; the text drives it when it is on", Assert.Single(found.Faults), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("DO_P1 := All_Units.P1", "DO_P1 := All_Units.P1 AND (All_Units.P1 OR DI_S2)")]
    [InlineData("S1_Contact := DI_S1", "S1_Contact := NOT (NOT DI_S1)")]
    [InlineData("Microamperes <= 3600", "Microamperes < 3601")]
    [InlineData("LIMIT(4000, INT_TO_DINT(Microamperes), 20000)", "MAX(4000, MIN(INT_TO_DINT(Microamperes), 20000))")]
    public void The_same_in_other_words_is_wired_as_declared(string words, string others) =>
        Assert.IsType<WiredAsDeclared>(Decide(Two, Changed(Two, words, others)));

    [Fact]
    public void Without_a_program_nothing_is_known_of_the_wiring()
    {
        WiringUndecided found = Assert.IsType<WiringUndecided>(Decide(Two, Two.Text[..Two.Text.IndexOf("PROGRAM PLANT_PROGRAM", StringComparison.Ordinal)]));
        Assert.StartsWith("the program around the blocks cannot be read", found.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_that_is_not_called_in_every_scan_is_not_equal()
    {
        const string behind = ");\n\n(* Outputs to coils";
        string text = Changed(Two, "\nAll_Units(", "\nIF DI_S1 THEN All_Units(");
        Assert.Contains(behind, text, StringComparison.Ordinal);
        Assert.IsNotType<WiredAsDeclared>(Decide(Two, text.Replace(behind, "); END_IF;\n\n(* Outputs to coils", StringComparison.Ordinal)));
    }

    private static string Changed(StructuredTextExport export, string words, string others)
    {
        Assert.Contains(words, export.Text, StringComparison.Ordinal);
        return export.Text.Replace(words, others, StringComparison.Ordinal);
    }

    private static WiringResult Decide(StructuredTextExport export, string text)
    {
        SourceText source = new("text.st", text);
        TransitionSystem? read = StructuredTextReader.Read(source, new ReadingOptions(export.Blocks[0].FunctionBlock, SiteExport.ScanMilliseconds)).System;
        Assert.NotNull(read);
        return WiringCheck.Decide(export, [read], source, SiteExport.ScanMilliseconds, ProofOptions.Default with { Conflicts = 10_000 }, CancellationToken.None);
    }
}
