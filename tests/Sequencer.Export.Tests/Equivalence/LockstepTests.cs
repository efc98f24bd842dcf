using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Equivalence;

public sealed class LockstepTests
{
    private const string Text =
        """
        PROGRAM Main
        VAR_INPUT A : BOOL; B : BOOL; Level : INT (0..100); END_VAR
        VAR_OUTPUT Q : BOOL; Alarm : BOOL; END_VAR
        VAR RETAIN count : INT (0..50); END_VAR
        VAR delay : TON; END_VAR
        IF A AND NOT B THEN
          IF count < 50 THEN count := count + 1; END_IF;
        ELSIF B THEN
          count := 0;
        END_IF;
        delay(IN := A AND count > 10, PT := T#1s);
        Q := delay.Q AND Level < 80;
        Alarm := Level >= 90 OR count = 50;
        END_PROGRAM
        """;

    [Fact]
    public void A_text_agrees_with_itself_under_other_names()
    {
        string renamed = Text.Replace("Level", "LT101", StringComparison.Ordinal).Replace("count", "Tally", StringComparison.Ordinal);
        Dictionary<string, string> names = new(StringComparer.Ordinal) { ["Level"] = "LT101", ["count"] = "Tally" };
        LockstepResult result = new Lockstep(Read(Text), Read(renamed), names).Run(scans: 20_000, seed: 1);
        Assert.True(result.Agrees, result.Difference?.ToString());
        Assert.Empty(result.Unpaired);
        Assert.Equal("Q Alarm count delay.scans delay.last", string.Join(' ', result.Compared));
    }

    [Theory]
    [InlineData("count > 10", "count >= 10")]
    [InlineData("T#1s", "T#1100ms")]
    [InlineData("A AND NOT B", "A OR NOT B")]
    [InlineData("count := 0", "count := 1")]
    [InlineData("Level < 80", "Level <= 80")]
    [InlineData("count = 50", "count = 49")]
    [InlineData("VAR RETAIN count", "VAR count")]
    [InlineData("delay.Q AND", "delay.Q OR")]
    [InlineData(">= 90 OR", ">= 90 XOR")]
    [InlineData("TON", "TOF")]
    public void A_changed_text_is_found_out(string from, string to)
    {
        Assert.Contains(from, Text, StringComparison.Ordinal);
        TransitionSystem changed = Read(Text.Replace(from, to, StringComparison.Ordinal));
        LockstepResult result = new Lockstep(Read(Text), changed, Same).Run(scans: 200_000, seed: 1);
        Assert.False(result.Agrees);
        LockstepDifference difference = Assert.IsType<LockstepDifference>(result.Difference);
        Assert.Equal(difference.Scan, difference.Inputs.Scans);
        Assert.NotEqual(difference.ReferenceValue, difference.OtherValue);
    }

    [Fact]
    public void The_first_scan_that_differs_is_named_with_both_values()
    {
        TransitionSystem changed = Read(Text.Replace("OR count = 50", "OR count = 0", StringComparison.Ordinal));
        LockstepDifference? difference = new Lockstep(Read(Text), changed, Same).Run(scans: 10, seed: 1).Difference;
        Assert.Equal("scan 1: Alarm is 0, Alarm is 1", difference?.ToString());
    }

    [Fact]
    public void A_name_without_a_partner_is_told_and_not_called_equal()
    {
        TransitionSystem other = Read(Text.Replace("Alarm", "HighLevel", StringComparison.Ordinal));
        LockstepResult result = new Lockstep(Read(Text), other, Same).Run(scans: 100, seed: 1);
        Assert.False(result.Agrees);
        Assert.Equal("output Alarm", Assert.Single(result.Unpaired));
    }

    [Fact]
    public void The_same_seed_gives_the_same_run()
    {
        TransitionSystem changed = Read(Text.Replace("count > 10", "count > 11", StringComparison.Ordinal));
        string first = new Lockstep(Read(Text), changed, Same).Run(scans: 100_000, seed: 7).Difference?.ToString() ?? "none";
        string second = new Lockstep(Read(Text), changed, Same).Run(scans: 100_000, seed: 7).Difference?.ToString() ?? "none";
        Assert.Equal(first, second);
    }

    private static Dictionary<string, string> Same => [];

    private static TransitionSystem Read(string text)
    {
        ReadingResult result = StructuredTextReader.Read(new SourceText("test.st", text), new ReadingOptions(ScanMilliseconds: 100));
        Assert.True(result.System is not null, DiagnosticRenderer.Render(result.Diagnostics));
        return result.System;
    }
}
