using System.Collections.Immutable;

namespace Sequencer.Plant.Description;

/// <summary>The water that seals a liquid-ring vacuum pump, on its way round through a cooler. Values are in litres, seconds, kW and degrees Celsius.</summary>
/// <param name="Name">its name</param>
/// <param name="HoldsLitres">all of it</param>
/// <param name="HeatKilowatts">what the pump puts into it at full speed</param>
/// <param name="FlowLitresPerSecond">through pump and cooler at full speed</param>
/// <param name="RatedCelsius">seal water for which the pump's vacuum is told</param>
/// <param name="CoolerKilowattsPerKelvin">conductance of the cooler</param>
/// <param name="CoolingFlowLitresPerSecond">of cooling water</param>
/// <param name="CoolingWater">the supply that the cooling water is from</param>
/// <param name="CoolingThrough">pumps and valves that the cooling water needs</param>
public sealed record SealWaterDescription(
    string Name,
    double HoldsLitres,
    double HeatKilowatts,
    double FlowLitresPerSecond,
    double RatedCelsius,
    double CoolerKilowattsPerKelvin,
    double CoolingFlowLitresPerSecond,
    string CoolingWater,
    ImmutableArray<string> CoolingThrough);
