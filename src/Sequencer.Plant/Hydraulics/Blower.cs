using System.Collections.Immutable;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Hydraulics;

/// <summary>
/// A blower, or several alike beside each other, that bring air to the floor of a tank. With its speed s, the flow Q and the depth h of the water:
/// <code>
/// blower: p = p_0 s^2 - a Q^2                   a from a rated point; at another speed by affinity (<see cref="PumpAffinity"/>)
/// flow:   Q = sqrt((p_0 s^2 - rho g h) / a),    none where the pressure does not reach down to the floor
/// </code>
/// Losses of pipe and diffusers are in the curve, so that two bring twice as much; air is taken as of one density (our own simplifications).
/// </summary>
internal sealed class Blower(AerationDescription description, ImmutableArray<Drive> drives)
{
    private readonly double _term = (description.ShutOffPascals - description.RatedPascals) / (description.RatedLitresPerSecond * description.RatedLitresPerSecond);

    public AerationDescription Description { get; } = description;

    /// <summary>L/s of air, of all that run.</summary>
    public double Flow(double time, double depthMetres)
    {
        double flow = 0.0;
        foreach (Drive drive in drives)
        {
            flow += OfOne(drive.Effect(time), depthMetres);
        }

        return flow;
    }

    public double NextKink(double time)
    {
        double next = double.PositiveInfinity;
        foreach (Drive drive in drives)
        {
            next = Math.Min(next, drive.NextKink(time));
        }

        return next;
    }

    private double OfOne(double speed, double depthMetres)
    {
        double left = PumpAffinity.Head(Description.ShutOffPascals, speed) - (WaterProperties.Density * OutletFlow.Gravity * depthMetres);
        return speed <= 0.0 || left <= 0.0 ? 0.0 : Math.Sqrt(left / _term);
    }

    /// <summary>Air over the rated flow.</summary>
    public double Share(double time, double depthMetres) => Flow(time, depthMetres) / Description.RatedLitresPerSecond;
}
