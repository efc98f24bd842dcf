using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>
/// The vacuum of a drum pumped down in a run. A tight vessel of the volume V, pumped by a pump that takes S of whatever pressure there is and gets no further than p_u, has dp/dt = -(S / V)(p - p_u):
/// the plant's lag with `pulls_down_in` = V / S and `deepest` the air's pressure less p_u, its cloth as good as shut.
/// </summary>
public sealed class EvacuationTests
{
    private static double Seconds(double timeConstant, double deepest, double to)
    {
        RunningPlant drum = RunningPlant.Start(RunningPlant.Model(DrumTests.Text.Replace(
            "deepest: -60 kPa, bare_cloth: -20 kPa, pulls_down_in: 5 s",
            FormattableString.Invariant($"deepest: -{deepest} kPa, bare_cloth: -{deepest - 0.001} kPa, pulls_down_in: {timeConstant} s"),
            StringComparison.Ordinal)));
        drum.Command(true, "VP1");
        // The pump's start is a ramp of a second, by which the vacuum is half a second late.
        double seconds = -0.5;
        while (drum.Quantity("F1.vacuum") > -to)
        {
            drum.Plant.Advance(0.01);
            Assert.Null(drum.Plant.Failure);
            seconds += 0.01;
        }

        return seconds;
    }

    /// <summary>1 m3 at 0.1 m3/s from 1000 mbar to 500, 100 and 10 mbar. Source: engineering reference page (secondary), which states 6.9, 23 and 46 s.</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData(500, 6.9)]
    [InlineData(100, 23.0)]
    [InlineData(10, 46.0)]
    public void A_vessel_is_pumped_out(double to, double seconds) => Within(seconds, Seconds(10.0, 100.0, 100.0 - (0.1 * to)), 0.01 * seconds);

    /// <summary>1000 m3 in 10 min to 200 mbar takes 160.9 m3/min. Source: engineering reference page (secondary): it states 1013 mbar at the start and reckons with 1000, and so prints 160.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_pump_is_sized() => Within(10.0, Seconds(1000.0 / 160.9 * 60.0, 100.0, 80.0) / 60.0, 0.02);

    /// <summary>A receiver of 2 m3 at 300 m3/h from 1013 to 400 mbar; the pump gets to 30 mbar: 23.5 s. Computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_pump_that_gets_no_further_takes_longer() => Within(23.5, Seconds(24.0, 98.3, 61.3), 0.005 * 23.5);
}
