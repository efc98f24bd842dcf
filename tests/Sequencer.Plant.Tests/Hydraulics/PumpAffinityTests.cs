using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Hydraulics;

public sealed class PumpAffinityTests
{
    /// <summary>25 L/s and 8.41 m at 1725 rpm, slowed to 1140 rpm. Source: set problem, which states 16.5 L/s and 3.67 m; the speed follows from them.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_slower_pump_gives_less()
    {
        Within(16.52, PumpAffinity.Flow(25, 1140.0 / 1725), 0.005 * 16.5);
        Within(3.67, PumpAffinity.Head(8.41, 1140.0 / 1725), 0.005 * 3.67);
    }

    /// <summary>A tenth faster. Source: engineering reference page (secondary).</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void Flow_head_and_power_go_with_the_first_three_powers_of_speed()
    {
        Within(1.10, PumpAffinity.Flow(1, 1.1), 1e-12);
        Within(1.21, PumpAffinity.Head(1, 1.1), 1e-12);
        Within(1.331, PumpAffinity.Power(1, 1.1), 1e-12);
    }

    /// <summary>300 US gallons a minute, 1170 to 1750 rpm. Source: set problem, answer computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_faster_pump_takes_much_more_power()
    {
        Within(448.7, PumpAffinity.Flow(300, 1750.0 / 1170), 0.45);
        Within(2.237, PumpAffinity.Head(1, 1750.0 / 1170), 0.003);
        Within(3.346, PumpAffinity.Power(1, 1750.0 / 1170), 0.004);
    }
}
