namespace Sequencer.StructuredText.Tests;

/// <summary>
/// The timing diagrams of IEC 61131-3 (second edition), 2.5.2.3.4, from memory, at one scan a second: a
/// column is a scan.
/// </summary>
public sealed class TimerTests
{
    [Theory]
    [InlineData("11111110", "00000110")]
    [InlineData("11110000", "00000000")]
    [InlineData("1110111111", "0000000001")]
    public void An_on_delay_answers_when_its_input_has_been_true_for_its_time(string input, string output)
    {
        Assert.Equal(output, Timer("TON", "T#5s").Row("Q", ("IN", input)));
    }

    [Fact]
    public void An_on_delay_of_no_time_follows_its_input()
    {
        Assert.Equal("0110", Timer("TON", "T#0s").Row("Q", ("IN", "0110")));
    }

    [Fact]
    public void A_time_between_two_scans_ends_with_the_later_one()
    {
        Assert.Equal("0001", Timer("TON", "T#2s500ms").Row("Q", ("IN", "1111")));
    }

    [Theory]
    [InlineData("1111111000", "0123455000")]
    [InlineData("1111000100", "0123000000")]
    public void The_elapsed_time_of_an_on_delay_stops_at_the_preset_and_falls_with_the_input(string input, string seconds)
    {
        Assert.Equal(seconds, Elapsed("TON", "T#5s", input));
    }

    [Theory]
    [InlineData("1100000000", "1111111000")]
    [InlineData("0000100000", "0000111111")]
    [InlineData("1000110000", "1111111111")]
    public void An_off_delay_holds_on_for_its_time_after_the_fall(string input, string output)
    {
        Assert.Equal(output[..input.Length], Timer("TOF", "T#5s").Row("Q", ("IN", input)));
    }

    [Fact]
    public void The_elapsed_time_of_an_off_delay_stays_at_the_preset_until_the_input_comes_again()
    {
        Assert.Equal("0000123330", Elapsed("TOF", "T#3s", "1110000001"));
    }

    [Fact]
    public void An_off_delay_whose_input_comes_back_in_time_begins_again()
    {
        Assert.Equal("000100123", Elapsed("TOF", "T#3s", "110010000"));
        Assert.Equal("111111110", Timer("TOF", "T#3s").Row("Q", ("IN", "110010000")));
    }

    [Theory]
    [InlineData("1000000000", "1111100000")]
    [InlineData("1001000000", "1111100000")]
    [InlineData("1111111100", "1111100000")]
    [InlineData("1000001000", "1111101111")]
    public void A_pulse_lasts_its_time_whatever_the_input_does_meanwhile(string input, string output)
    {
        Assert.Equal(output, Timer("TP", "T#5s").Row("Q", ("IN", input)));
    }

    [Theory]
    [InlineData("1111111100", "0123455500")]
    [InlineData("1000000000", "0123400000")]
    public void The_elapsed_time_of_a_pulse_stays_at_the_preset_while_the_input_is_true(string input, string seconds)
    {
        Assert.Equal(seconds, Elapsed("TP", "T#5s", input));
    }

    [Fact]
    public void A_timer_that_is_not_retained_begins_again_after_a_return_of_power()
    {
        Scans timer = Timer("TON", "T#3s");
        Assert.Equal("0000001", timer.Row("Q", ("IN", "1111111"), ("power.returned", "0001000")));
    }

    [Fact]
    public void A_retained_timer_goes_on_after_a_return_of_power()
    {
        Scans timer = Timer("TON", "T#3s", "VAR RETAIN");
        Assert.Equal("0001111", timer.Row("Q", ("IN", "1111111"), ("power.returned", "0010000")));
    }

    private static string Elapsed(string type, string preset, string input)
    {
        Scans timer = Timer(type, preset);
        return string.Concat(input.Select(bit => timer.Scan(("IN", bit - '0'))["Timer1.ET"] / 1000));
    }

    private static Scans Timer(string type, string preset, string section = "VAR") => Scans.Of(
        $"""
        PROGRAM Main
        VAR_INPUT IN : BOOL; END_VAR
        VAR_OUTPUT Q : BOOL; END_VAR
        {section} Timer1 : {type}; END_VAR
        Timer1(IN := IN, PT := {preset}, Q => Q);
        END_PROGRAM
        """);
}
