using System.Collections.Immutable;

namespace Sequencer.Plant.Description;

/// <summary>Air that a blower, or several, bring into a tank. Values are in pascals, litres and seconds.</summary>
/// <param name="Blowers">their motors, of blowers with the same curve</param>
/// <param name="ShutOffPascals">pressure of each at no flow, at full speed</param>
/// <param name="RatedLitresPerSecond">a flow on its curve</param>
/// <param name="RatedPascals">its pressure there</param>
/// <param name="EqualisesSeconds">time constant of carbon dioxide between water and air at the rated flow</param>
/// <param name="LagSeconds">time constant of mixing by the air alone at the rated flow</param>
public sealed record AerationDescription(
    ImmutableArray<string> Blowers,
    double ShutOffPascals,
    double RatedLitresPerSecond,
    double RatedPascals,
    double EqualisesSeconds,
    double LagSeconds);
