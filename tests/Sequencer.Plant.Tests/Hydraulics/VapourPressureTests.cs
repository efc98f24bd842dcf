using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Hydraulics;

public sealed class VapourPressureTests
{
    /// <summary>kPa of saturated steam: steam tables (IAPWS), from memory.</summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(0.01, 0.6117)]
    [InlineData(15.0, 1.706)]
    [InlineData(20.0, 2.339)]
    [InlineData(35.0, 5.629)]
    [InlineData(40.0, 7.385)]
    [InlineData(60.0, 19.95)]
    [InlineData(100.0, 101.42)]
    public void Water_boils_as_steam_tables_say(double celsius, double kilopascals) =>
        Within(kilopascals, WaterProperties.VapourPressure(celsius) / 1000.0, 0.001 * kilopascals);

    /// <summary>Magnus' form as meteorologists have it, 6.1094 exp(17.625 T / (T + 243.04)) hPa (O. A. Alduchov and R. E. Eskridge, J. Appl. Meteorol. 35 (1996) 601, from memory), good to 0.4 % up to 50 C: another formula, from other measurements.</summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(5.0)]
    [InlineData(25.0)]
    [InlineData(45.0)]
    public void It_agrees_with_what_meteorologists_use(double celsius)
    {
        double magnus = 610.94 * Math.Exp(17.625 * celsius / (celsius + 243.04));
        Within(magnus, WaterProperties.VapourPressure(celsius), 0.004 * magnus);
    }
}
