using System.Globalization;
using Sequencer.Export.Equivalence;
using Sequencer.Proof;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Equivalence;

/// <summary>Programs with procedures for Holding, Restarting, Stopping and Aborting, written as text and proved equal to it.</summary>
public sealed class SectionExportTests
{
    private const string Program = """
        language 1
        unit U "Tank with a line to flush"
        input  LT1  0 .. 10.00 m3  at %IW0  "Level"  bad after 0.3 s
        input  S1  switch  at %IX0.0  "First"
        input  S2  switch  at %IX0.1  "Second"
        input  S3  switch  at %IX0.2  "Third"
        input  ES  switch normally closed  at %IX0.3  "Emergency stop pressed"
        output M1  motor  at %QX0.0  "First motor"   safe stopped
        output M2  motor  at %QX0.1  "Second motor"  safe stopped  held running  driven while holding or stopping
        output X1  valve  at %QX0.2  "Flush valve"   safe closed  driven while holding or restarting or stopping or aborting
        latch LINE "Reagent in the line" set when M1 clear when X1 stays 0.5 s retained
        interlock I1 "Full" X1 blocked while LT1 > 8.00 m3
        trip T1 "Emergency stop" when ES then emergency
        after power loss held, restart begins with 0.4 s wait

        procedure
          step 10 "Fill"
            run M1
            limit 3 s then hold "Too long"
            go 20 and 30 when LT1 > 5.00 m3 stays 0.3 s
          step 20 "Left"
            run M2 after 0.2 s for 0.5 s
            limit 4 s then abort "Too long"
            go finish when S1
          step 30 "Right" only if S3
            limit 4 s then stop "Too long"
            go finish when S2 stays 0.4 s

        holding
          step 100 "Drain"
            run M2 until LT1 < 2.00 m3
            limit 1 s then go 110 "Drain slow"
            go 110 and 120 when S1
          step 110 "Flush" only if LINE
            open X1
            limit 2 s then go finish "Not flushed"
            go 130 when X1 stays 0.5 s
          step 120 "Wait"
            limit 3 s then go finish "Too long"
            go finish when S2
          step 130 "Rest"
            limit 0.5 s then abort "Too long"
            go finish when S3

        restarting
          step 200 "Prime"
            open X1 after 0.1 s
            limit 1 s then hold "Not primed"
            go finish when S2 stays 0.2 s

        stopping
          step 300 "Both"
            limit 0.3 s then go 310 "Too long"
            go 310 and 320 when S1
          step 310 "Flush"
            open X1 while S2
            limit 1 s then go finish "Too long"
          step 320 "Drain"
            run M2
            limit 1 s then go finish "Too long"
          join 310, 320 to 330 when S3 stays 0.2 s
          step 330 "Rest"
            limit 0.4 s then abort "Too long"
            go finish when S1

        aborting
          step 400 "Flush" only if LINE
            open X1
            limit 1 s then go finish "Not flushed"
            go finish when X1 stays 0.5 s
        """;

    private static DemoExport Exported { get; } = new("sections", new SourceText("sections.seq", Program));

    [Fact]
    public void A_program_with_steps_in_all_four_states_is_proved_equal_to_its_text()
    {
        EqualityResult result = Exported.Decide(Exported.Export.Text, ProofOptions.Default);

        Assert.IsType<ProvedEqual>(result);
    }

    [Fact]
    public void It_runs_beside_its_text_without_a_difference()
    {
        ReadBackResult result = ReadBack.Run(Exported.System, Exported.Export, 30_000, seed: 5, CancellationToken.None);

        Assert.True(result.Difference is null, result.Difference?.ToString());
        Assert.Equal(30_000, result.Scans);
    }

    /// <summary>Each change spoils what one section does; a proof that still came out would prove nothing.</summary>
    [Theory]
    [InlineData("Step110_Passed_Over := (NOT", "Step110_Passed_Over := (")]
    [InlineData("ELSIF State_Now = STATE_HOLDING THEN", "ELSIF State_Now = STATE_HELD THEN")]
    [InlineData("IF (State_At_Start = STATE_ABORTING) AND (State_Now = STATE_ABORTING)", "IF (State_At_Start = STATE_ABORTING) AND (State_Now = STATE_STOPPING)")]
    [InlineData("IF State_Now = STATE_RESTARTING THEN", "IF State_Now = STATE_HELD THEN")]
    public void A_text_with_a_changed_section_is_never_called_equal(string from, string to)
    {
        string text = Exported.Export.Text;
        Assert.True(text.Contains(from, StringComparison.Ordinal), $"not in the text: {from}");
        int place = text.IndexOf(from, StringComparison.Ordinal);

        string changed = string.Create(CultureInfo.InvariantCulture, $"{text[..place]}{to}{text[(place + from.Length)..]}");

        Assert.IsNotType<ProvedEqual>(Exported.Decide(changed, ProofOptions.Default));
    }
}
