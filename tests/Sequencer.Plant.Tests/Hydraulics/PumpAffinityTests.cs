using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Hydraulics;

public sealed class PumpAffinityTests
{
    /// <summary>8.41 m at 1725 rpm, slowed to 1140 rpm: 3.67 m. A tenth faster: 1.21 times the head. Sources: set problem; engineering reference page (secondary).</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData(8.41, 1140.0, 1725.0, 3.67)]
    [InlineData(1.0, 1.1, 1.0, 1.21)]
    public void Head_goes_with_the_square_of_the_speed(double head, double speed, double from, double expected) =>
        Within(expected, PumpAffinity.Head(head, speed / from), 0.002 * expected);
}
