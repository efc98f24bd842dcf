using Sequencer.Plant.Tests.OutsideChecks;
using Sequencer.Plant.Vacuum;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Vacuum;

public sealed class EvacuationTests
{
    /// <summary>1 m3 at 0.1 m3/s from 1000 mbar. Source: engineering reference page (secondary), which states 6.9, 23 and 46 s.</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData(500, 6.93)]
    [InlineData(100, 23.03)]
    [InlineData(10, 46.05)]
    public void A_vessel_is_pumped_out(double to, double seconds) => Within(seconds, Evacuation.Seconds(1, 0.1, 1000, to), 0.005 * seconds);

    /// <summary>1000 m3 in 10 min to 200 mbar takes 160.9 m3/min. Source: engineering reference page (secondary): it states 1013 mbar at the start and reckons with 1000, and so prints 160.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_pump_is_sized() => Within(10.0, Evacuation.Seconds(1000, 160.9, 1000, 200), 0.02);

    /// <summary>A receiver of 2 m3 at 300 m3/h from 1013 to 400 mbar; the pump gets to 30 mbar. Computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(0, 22.3)]
    [InlineData(30, 23.5)]
    public void A_pump_that_gets_no_further_takes_longer(double ultimate, double seconds) =>
        Within(seconds, Evacuation.Seconds(2, 300.0 / 3600, 1013, 400, ultimate), 0.005 * seconds);
}
