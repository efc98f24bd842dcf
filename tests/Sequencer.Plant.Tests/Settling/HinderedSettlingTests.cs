using Sequencer.Plant.Settling;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Settling;

public sealed class HinderedSettlingTests
{
    /// <summary>
    /// Glass spheres of 0.1554 mm, 2467 kg/m3, 0.60 of the mass of a slurry in water of 998 kg/m3 and 1.005 mPa s. Source: worked companion of Geankoplis, Transport Processes and Unit
    /// Operations, example 14.3-2, p. 820: 0.622, 1.53e-3 m/s, Reynolds number 0.121.
    /// </summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void Crowded_spheres_settle_slowly()
    {
        double liquid = HinderedSettling.LiquidFraction(0.60, 2467, 998);
        double velocity = HinderedSettling.Velocity(1.554e-4, 2467, 998, 1.005e-3, liquid);
        Within(0.6224, liquid, 0.0003);
        Within(1.530e-3, velocity, 0.003 * 1.530e-3);
        Within(0.121, HinderedSettling.Reynolds(1.554e-4, velocity, 2467, 998, 1.005e-3, liquid), 0.001);
    }
}
