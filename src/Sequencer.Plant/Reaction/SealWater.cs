using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Heat;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// The seal water of a liquid-ring vacuum pump. With the pump's speed s, the mass m of the water and its vapour pressure p_v:
/// <code>
/// warms:   m c dT/dt = s heat - Q,   Q of the cooler (<see cref="HeatExchanger"/>)
/// vacuum:  what the pump reaches is less by p_v(T) - p_v(rated): the water boils in it (the usual correction of such pumps, common practice, no source)
/// </code>
/// Lost, it seals nothing: no vacuum, and no heat goes into it.
/// </summary>
internal sealed class SealWater
{
    /// <summary>J/(kg K), of water (from memory); a litre counts as a kilogram.</summary>
    private const double SpecificHeat = 4180.0;

    private const double WattsPerKilowatt = 1000.0;

    /// <summary>Conductance of a fouled cooler over that of a clean one (our own choice).</summary>
    private const double FouledShare = 0.25;

    /// <summary>kg/s below which no heat is passed on.</summary>
    private const double NoFlow = 1e-9;

    private readonly int _temperature;
    private readonly double _coolingCelsius;
    private readonly Drive _pump;
    private readonly ImmutableArray<Drive> _cooling;
    private readonly double _ratedVapourPressure;
    private readonly Ramp _there = new(1.0, 0.0);
    private readonly Ramp _cooled = new(1.0, 0.0);
    private readonly Ramp _clean = new(1.0, 0.0);
    private bool _coolingStopped;
    private bool _coolingWaterLost;

    /// <param name="description">as described</param>
    /// <param name="temperature">place of its temperature in the state</param>
    /// <param name="coolingCelsius">of the cooling water</param>
    /// <param name="pump">the vacuum pump</param>
    /// <param name="cooling">what the cooling water goes through</param>
    public SealWater(SealWaterDescription description, int temperature, double coolingCelsius, Drive pump, ImmutableArray<Drive> cooling)
    {
        Description = description;
        _temperature = temperature;
        _coolingCelsius = coolingCelsius;
        _pump = pump;
        _cooling = cooling;
        _ratedVapourPressure = WaterProperties.VapourPressure(description.RatedCelsius);
    }

    public SealWaterDescription Description { get; }

    public double Celsius(ReadOnlySpan<double> state) => state[_temperature];

    /// <summary>L/s through pump and cooler.</summary>
    public double Flow(double time) => _pump.Effect(time) * _there.Value(time) * Description.FlowLitresPerSecond;

    /// <summary>kW that the cooler takes out of it; less than none where it warms it.</summary>
    public double CoolingKilowatts(double time, ReadOnlySpan<double> state)
    {
        double seal = Flow(time);
        double cooling = CoolingFlow(time);
        return Math.Min(seal, cooling) < NoFlow ? 0.0 : HeatExchanger.Heat(
            seal * SpecificHeat,
            cooling * SpecificHeat,
            (FouledShare + ((1.0 - FouledShare) * _clean.Value(time))) * Description.CoolerKilowattsPerKelvin * WattsPerKilowatt,
            Celsius(state),
            _coolingCelsius) / WattsPerKilowatt;
    }

    /// <summary>What is left of a vacuum that the pump reaches with seal water as it is rated for, as a share of it; Pa below the air's pressure.</summary>
    public double Share(double deepestPascals, double time, ReadOnlySpan<double> state)
    {
        double lost = WaterProperties.VapourPressure(Celsius(state)) - _ratedVapourPressure;
        return _there.Value(time) * Math.Max(0.0, 1.0 - (lost / deepestPascals));
    }

    public void AddRates(double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        double heat = _pump.Effect(time) * _there.Value(time) * Description.HeatKilowatts;
        rates[_temperature] = (heat - CoolingKilowatts(time, state)) * WattsPerKilowatt / (Description.HoldsLitres * SpecificHeat);
    }

    public double NextKink(double time)
    {
        double next = Math.Min(_there.NextKink(time), Math.Min(_cooled.NextKink(time), _clean.NextKink(time)));
        foreach (Drive drive in _cooling)
        {
            next = Math.Min(next, drive.NextKink(time));
        }

        return next;
    }

    public void Lose(double time, bool lost) => _there.MoveTo(time, lost ? 0.0 : 1.0, Ramp.AtOnce);

    /// <summary>No cooling water comes through the cooler.</summary>
    public void StopCooling(double time, bool stopped)
    {
        _coolingStopped = stopped;
        MoveCooled(time);
    }

    /// <summary>The supply gives no cooling water.</summary>
    public void LoseCoolingWater(double time, bool lost)
    {
        _coolingWaterLost = lost;
        MoveCooled(time);
    }

    public void Foul(double time, bool fouled) => _clean.MoveTo(time, fouled ? 0.0 : 1.0, Ramp.AtOnce);

    private void MoveCooled(double time) => _cooled.MoveTo(time, _coolingStopped || _coolingWaterLost ? 0.0 : 1.0, Ramp.AtOnce);

    private double CoolingFlow(double time)
    {
        double opening = _cooled.Value(time);
        foreach (Drive drive in _cooling)
        {
            opening = Math.Min(opening, drive.Effect(time));
        }

        return opening * Description.CoolingFlowLitresPerSecond;
    }
}
