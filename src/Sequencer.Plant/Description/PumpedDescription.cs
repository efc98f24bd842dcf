namespace Sequencer.Plant.Description;

/// <summary>A line whose flow is where its pump's curve meets its pipe's.</summary>
/// <param name="ShutOffMetres">head of the pump at no flow, at full speed</param>
/// <param name="RatedLitresPerSecond">a flow on its curve</param>
/// <param name="RatedMetres">its head there</param>
/// <param name="LiftMetres">from the floor of the tank that it draws from to where the line ends</param>
/// <param name="BoreMetres">of the pipe</param>
/// <param name="LengthMetres">of the pipe</param>
/// <param name="RoughnessMetres">of its wall</param>
/// <param name="Fittings">velocity heads lost in bends and open valves</param>
public sealed record PumpedDescription(
    double ShutOffMetres,
    double RatedLitresPerSecond,
    double RatedMetres,
    double LiftMetres,
    double BoreMetres,
    double LengthMetres,
    double RoughnessMetres,
    double Fittings);
