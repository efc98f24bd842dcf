using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Protections;

/// <summary>
/// Alarms with deadband, delays, suppression and the states of IEC 62682 (its alarm state diagram, from memory; shelved,
/// out of service and suppressed by design as states are left out).
/// </summary>
public sealed class AlarmTests
{
    private const string Full =
        "alarm A1 \"Full\" when LT1 > 8.00 m3 deadband 0.50 m3, priority high, consequence \"Overflow\", response \"Close\" within 5 min";

    [Fact]
    public void A_deadband_keeps_the_alarm_until_the_value_is_back_by_it()
    {
        ProgramBench bench = BenchPrograms.Bench(Full);
        Assert.Equal([0, 1, 1, 1, 0, 0], new[] { 800, 801, 800, 751, 750, 800 }.Select(value => With(bench, value)["alarm A1"]));
    }

    [Fact]
    public void A_deadband_of_a_low_alarm_lies_above()
    {
        ProgramBench bench = BenchPrograms.Bench("alarm A1 \"Low\" when LT1 < 1.00 m3 deadband 0.50 m3");
        Assert.Equal([0, 1, 1, 0, 0], new[] { 100, 99, 149, 150, 100 }.Select(value => With(bench, value)["alarm A1"]));
    }

    [Fact]
    public void An_alarm_is_raised_by_a_reading_that_is_not_usable()
    {
        ProgramBench bench = BenchPrograms.Bench(Full).Scan();
        bench.Set("LT1.fault", 1);
        Assert.Equal(1, bench.Scan(5)["alarm A1"]);
    }

    [Fact]
    public void A_suppressed_alarm_is_silent_in_its_steps_and_back_after_them()
    {
        ProgramBench bench = BenchPrograms.Started("alarm A1 \"Second\" when S2 suppressed at step 10");
        bench.Set("S2.contact", 1);
        Assert.Equal(0, bench.Scan(2)["alarm A1"]);
        bench.Press("stop");
        Assert.Equal(1, bench.Scan(2)["alarm A1"]);
    }

    /// <summary>Each arrow of the diagram: state before, event still there, acknowledged, state after.</summary>
    [Theory]
    [InlineData(AlarmState.Normal, false, false, AlarmState.Normal)]
    [InlineData(AlarmState.Normal, false, true, AlarmState.Normal)]
    [InlineData(AlarmState.Normal, true, false, AlarmState.Unacknowledged)]
    [InlineData(AlarmState.Normal, true, true, AlarmState.Unacknowledged)]
    [InlineData(AlarmState.Unacknowledged, true, false, AlarmState.Unacknowledged)]
    [InlineData(AlarmState.Unacknowledged, true, true, AlarmState.Acknowledged)]
    [InlineData(AlarmState.Unacknowledged, false, false, AlarmState.ReturnedUnacknowledged)]
    [InlineData(AlarmState.Unacknowledged, false, true, AlarmState.Normal)]
    [InlineData(AlarmState.Acknowledged, true, false, AlarmState.Acknowledged)]
    [InlineData(AlarmState.Acknowledged, true, true, AlarmState.Acknowledged)]
    [InlineData(AlarmState.Acknowledged, false, false, AlarmState.Normal)]
    [InlineData(AlarmState.Acknowledged, false, true, AlarmState.Normal)]
    [InlineData(AlarmState.ReturnedUnacknowledged, true, false, AlarmState.Unacknowledged)]
    [InlineData(AlarmState.ReturnedUnacknowledged, true, true, AlarmState.Unacknowledged)]
    [InlineData(AlarmState.ReturnedUnacknowledged, false, false, AlarmState.ReturnedUnacknowledged)]
    [InlineData(AlarmState.ReturnedUnacknowledged, false, true, AlarmState.Normal)]
    public void The_states_follow_the_event_and_the_acknowledgement(AlarmState before, bool raised, bool acknowledged, AlarmState after)
    {
        ProgramBench bench = BenchPrograms.Bench(Full).Scan();
        if (before != AlarmState.Normal)
        {
            With(bench, 900);
        }

        if (before == AlarmState.Acknowledged)
        {
            bench.Press("acknowledge");
        }
        else if (before == AlarmState.ReturnedUnacknowledged)
        {
            With(bench, 100);
        }

        Assert.Equal((long)before, bench["A1.state"]);
        if (before == AlarmState.Acknowledged)
        {
            With(bench, 900);
        }

        bench.Set("LT1", raised ? 900 : 100);
        bench.Set("U.acknowledge", acknowledged ? 1 : 0);
        Assert.Equal((long)after, bench.Scan()["A1.state"]);
    }

    [Fact]
    public void What_is_not_acknowledged_outlives_a_loss_of_power()
    {
        ProgramBench bench = BenchPrograms.Bench(Full).Scan();
        With(bench, 900);
        With(bench, 100);
        Assert.Equal((long)AlarmState.ReturnedUnacknowledged, bench.LosePower()["A1.state"]);
    }

    private static ProgramBench With(ProgramBench bench, long level)
    {
        bench.Set("LT1", level);
        return bench.Scan();
    }
}
