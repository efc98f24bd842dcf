using Sequencer.Plant.Description;

namespace Sequencer.Plant.Hydraulics;

/// <summary>
/// A centrifugal pump in its pipe. With the speed s, the flow Q (L/s) and the opening o of its valves:
/// <code>
/// pump:  H = H_0 s^2 - a Q^2                    a from a rated point; at another speed by affinity (<see cref="PumpAffinity"/>)
/// pipe:  H = lift - level + r Q^2 / o^2         r = (f L/D + fittings) / (2 g A^2) (Darcy and Weisbach, <see cref="PipeFriction"/>)
/// flow:  Q = sqrt((H_0 s^2 - lift + level) / (a + r / o^2)),  none where the head does not reach (a non-return valve)
/// </code>
/// f is that of the flow with everything open and the tank at its floor: with less flow it is a little more (our own simplification, as is a valve that lets through in
/// proportion to its way).
/// </summary>
internal sealed class PumpedLine
{
    /// <summary>m2/s, water at 20 C.</summary>
    private const double KinematicViscosity = 1.004e-6;

    private const double LitresPerCubicMetre = 1000.0;
    private const int Rounds = 20;

    private readonly PumpedDescription _description;
    private readonly double _pumpTerm;
    private readonly double _pipeTerm;

    public PumpedLine(PumpedDescription description)
    {
        _description = description;
        _pumpTerm = (description.ShutOffMetres - description.RatedMetres) / (description.RatedLitresPerSecond * description.RatedLitresPerSecond);
        double flow = description.RatedLitresPerSecond;
        for (int round = 0; round < Rounds; round++)
        {
            _pipeTerm = PipeTerm(flow);
            double found = Flow(1.0, 1.0, 0.0);
            flow = found > 0.0 ? found : flow;
        }
    }

    /// <summary>L/s.</summary>
    public double Flow(double speed, double opening, double levelMetres)
    {
        double head = PumpAffinity.Head(_description.ShutOffMetres, speed) - _description.LiftMetres + levelMetres;
        return speed <= 0.0 || opening <= 0.0 || head <= 0.0 ? 0.0 : Math.Sqrt(head / (_pumpTerm + (_pipeTerm / (opening * opening))));
    }

    /// <summary>m for each (L/s)^2.</summary>
    private double PipeTerm(double litresPerSecond)
    {
        double flow = litresPerSecond / LitresPerCubicMetre;
        double velocity = flow / (Math.PI / 4.0 * _description.BoreMetres * _description.BoreMetres);
        double friction = PipeFriction.HeadLoss(flow, _description.BoreMetres, _description.LengthMetres, _description.RoughnessMetres, KinematicViscosity);
        double fittings = _description.Fittings * velocity * velocity / (2.0 * OutletFlow.Gravity);
        return (friction + fittings) / (litresPerSecond * litresPerSecond);
    }
}
