using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

public sealed class ProbeLagTests
{
    /// <summary>
    /// A probe with a dead time of 2 s and a lag of 5 s shows 86 % of a step after the dead time and two lags, 98 % after four. Source: a professional society's note on electrode response. Here a
    /// transmitter in a run, of a flow that begins within a scan.
    /// </summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData(12.0, 0.86)]
    [InlineData(22.0, 0.98)]
    public void A_step_is_seen_after_the_dead_time_with_the_lag(double seconds, double share)
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(instruments: "FT9: {measures: flow, in: fill, low: 0 m3/h, high: 10 m3/h, lag: 5 s, dead_time: 2 s}"));
        plant.Command(true, "P1");
        plant.Run(seconds);
        Within(share, plant.Reading("FT9") / 8.0, 0.006);
    }

    /// <summary>A lag has seen 1 - 1/e of a step after its time. Computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_step_is_seen_to_all_but_one_in_e_after_the_lag()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(instruments: "FT9: {measures: flow, in: fill, low: 0 m3/h, high: 10 m3/h, lag: 5 s, dead_time: 2 s}"));
        plant.Command(true, "P1");
        plant.Run(2.0);
        Within(0.0, plant.Reading("FT9"), 1e-9);
        plant.Run(5.0);
        Within(0.632, plant.Reading("FT9") / 8.0, 0.01);
    }
}
