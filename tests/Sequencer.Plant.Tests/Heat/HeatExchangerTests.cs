using Sequencer.Plant.Heat;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Heat;

public sealed class HeatExchangerTests
{
    /// <summary>Source of the formula: engineering reference page (secondary); numbers computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(1, 0, 0.6321)]
    [InlineData(1, 0.5, 0.5647)]
    [InlineData(1, 1, 0.5000)]
    [InlineData(2, 0.5, 0.7746)]
    [InlineData(3, 1, 0.7500)]
    public void Effectiveness_follows_from_size(double units, double ratio, double expected) => Within(expected, HeatExchanger.Effectiveness(units, ratio), 1e-4);

    [Fact]
    public void Nearly_equal_streams_are_as_equal_ones() => Within(HeatExchanger.Effectiveness(2, 1), HeatExchanger.Effectiveness(2, 1 - 1e-7), 1e-6);

    /// <summary>Water 95 C and 20 C, one and a half times as much hot, UA 1400 W/K: the cold leaves at 56.0 C, the hot 15 K above it. Source: set problem, answer computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Hot_water_heats_cold()
    {
        double cold = 0.416 * 4180;
        double heat = HeatExchanger.Heat(1.5 * cold, cold, 1400, 95, 20);
        Within(62.6e3, heat, 0.003 * 62.6e3);
        Within(56.0, 20 + (heat / cold), 0.1);
        Within(15.0, 95 - (heat / (1.5 * cold)) - 20 - (heat / cold), 0.15);
    }

    /// <summary>Oil 0.1 kg/s of 2131 J/(kg K) from 100 C, water 0.2 kg/s of 4178 J/(kg K) from 30 C, UA of 65.9 m of 25 mm pipe at 38.1 W/(m2 K): 8524 W. Source: heat-transfer textbook example 11.1, from memory; arithmetic computed.</summary>
    [OutsideCheck(Basis.Memory)]
    [Fact]
    public void Water_cools_oil()
    {
        double heat = HeatExchanger.Heat(0.1 * 2131, 0.2 * 4178, 38.1 * Math.PI * 0.025 * 65.9, 100, 30);
        Within(8524, heat, 0.005 * 8524);
        Within(40.2, 30 + (heat / (0.2 * 4178)), 0.1);
    }

    /// <summary>Seal water of 35 C, 0.5 kg/s, cooled by 0.6 kg/s of 15 C with 1500 W/K: 26.35 C, 18.1 kW. Computed with 4180 J/(kg K).</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Seal_water_is_cooled()
    {
        double heat = HeatExchanger.Heat(0.5 * 4180, 0.6 * 4180, 1500, 35, 15);
        Within(18.1e3, heat, 0.003 * 18.1e3);
        Within(26.35, 35 - (heat / (0.5 * 4180)), 0.05);
    }
}
