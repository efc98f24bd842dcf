using System.Collections.Immutable;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// Carbon dioxide between the water of a tank and the air: dC/dt = (C_air - [CO2]) / tau, two films of which that in the water tells. C_air = K_H p, K_H =
/// 10^-1.468 mol/(L atm) at 25 C (USGS phreeqc.dat, CO2(g)) with an enthalpy of -20.0 kJ/mol (from memory), p = 4.2e-4 atm (from memory). The pH is solved for each rate.
/// </summary>
internal sealed class TankAir
{
    private const double HenryAt25 = -1.468;
    private const double EnthalpyJoules = -20.0e3;
    private const double GasConstant = 8.314462618;
    private const double Kelvin = 273.15;
    private const double Reference = 298.15;

    /// <summary>atm of carbon dioxide in air.</summary>
    private const double Pressure = 4.2e-4;

    private readonly StateLayout _layout;
    private readonly ContentLayout _contents;
    private readonly ImmutableArray<WaterChemistry?> _chemistry;
    private readonly double[] _dissolved;

    public TankAir(StateLayout layout, ContentLayout contents, ImmutableArray<TankBody> tanks, ImmutableArray<string> precipitates)
    {
        _layout = layout;
        _contents = contents;
        _dissolved = new double[contents.Dissolved.Length];
        _chemistry = [.. tanks.Select(tank => contents.Carbonate >= 0 && (tank.Description.AirSeconds is not null || tank.Blower is not null) ? new WaterChemistry(contents, precipitates) : null)];
    }

    /// <summary>mol/L of carbon dioxide that air keeps in water.</summary>
    public static double OfAir(double celsius) =>
        Math.Pow(10.0, HenryAt25) * Math.Exp(-EnthalpyJoules / GasConstant * ((1.0 / (celsius + Kelvin)) - (1.0 / Reference))) * Pressure;

    /// <summary>Adds to the rates of a tank that is open to the air; no numbers where its water has no equilibrium: the step is then cut.</summary>
    public void AddRates(TankBody tank, double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        if (_chemistry[tank.Index] is not { } chemistry)
        {
            return;
        }

        int mixed = _layout.Mixed(tank.Index);
        double litres = state[_layout.Volume(tank.Index)];
        double seconds = tank.AirSeconds(time, litres);
        if (double.IsInfinity(seconds))
        {
            return;
        }

        for (int substance = 0; substance < _dissolved.Length; substance++)
        {
            _dissolved[substance] = state[mixed + substance] / litres;
        }

        double celsius = state[_layout.Heat(tank.Index)] / litres;
        double there = chemistry.Solve(_dissolved, celsius).IsSolved ? chemistry.CarbonDioxide : double.NaN;
        double lost = litres * (there - OfAir(celsius)) / seconds;
        rates[mixed + _contents.Carbonate] -= lost;
        rates[_layout.WentOut + 1 + _contents.Carbonate] += lost;
    }
}
