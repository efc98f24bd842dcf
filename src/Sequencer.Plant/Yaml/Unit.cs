using System.Collections.Immutable;

namespace Sequencer.Plant.Yaml;

/// <summary>
/// A unit that files may write after a number. One of it is <paramref name="Scale"/> base units of
/// its dimension. Spellings follow the trade (<c>m3/h</c>, <c>L/min</c>); <c>L</c> and <c>l</c> are
/// both read.
/// </summary>
public sealed record Unit(string Symbol, Dimension Dimension, double Scale)
{
    private const double SecondsPerMinute = 60.0;
    private const double SecondsPerHour = 3600.0;
    private const double SecondsPerDay = 86400.0;
    private const double LitresPerCubicMetre = 1000.0;

    public static ImmutableArray<Unit> All { get; } =
    [
        new("L", Dimension.Volume, 1.0),
        new("l", Dimension.Volume, 1.0),
        new("mL", Dimension.Volume, 1e-3),
        new("m3", Dimension.Volume, LitresPerCubicMetre),
        new("L/s", Dimension.VolumeFlow, 1.0),
        new("L/min", Dimension.VolumeFlow, 1.0 / SecondsPerMinute),
        new("L/h", Dimension.VolumeFlow, 1.0 / SecondsPerHour),
        new("m3/h", Dimension.VolumeFlow, LitresPerCubicMetre / SecondsPerHour),
        new("m3/d", Dimension.VolumeFlow, LitresPerCubicMetre / SecondsPerDay),
        new("m", Dimension.Length, 1.0),
        new("mm", Dimension.Length, 1e-3),
        new("cm", Dimension.Length, 1e-2),
        new("m2", Dimension.Area, 1.0),
        new("mm2", Dimension.Area, 1e-6),
        new("cm2", Dimension.Area, 1e-4),
        new("ms", Dimension.Time, 1e-3),
        new("s", Dimension.Time, 1.0),
        new("min", Dimension.Time, SecondsPerMinute),
        new("h", Dimension.Time, SecondsPerHour),
        new("d", Dimension.Time, SecondsPerDay),
        new("1/s", Dimension.Frequency, 1.0),
        new("1/min", Dimension.Frequency, 1.0 / SecondsPerMinute),
        new("1/h", Dimension.Frequency, 1.0 / SecondsPerHour),
        new("rpm", Dimension.Frequency, 1.0 / SecondsPerMinute),
        new("pH", Dimension.Acidity, 1.0),
        new("C", Dimension.Temperature, 1.0),
        new("mol/L", Dimension.AmountConcentration, 1.0),
        new("mmol/L", Dimension.AmountConcentration, 1e-3),
        new("umol/L", Dimension.AmountConcentration, 1e-6),
        new("mg/L", Dimension.MassConcentration, 1.0),
        new("g/L", Dimension.MassConcentration, 1e3),
        new("kg/L", Dimension.MassConcentration, 1e6),
        new("%", Dimension.Fraction, 1e-2),
        new("W", Dimension.Power, 1e-3),
        new("kW", Dimension.Power, 1.0),
        new("Pa", Dimension.Pressure, 1e-3),
        new("kPa", Dimension.Pressure, 1.0),
        new("bar", Dimension.Pressure, 100.0),
        new("mbar", Dimension.Pressure, 0.1),
        new("g", Dimension.Mass, 1e-3),
        new("kg", Dimension.Mass, 1.0),
        new("kg/s", Dimension.MassFlow, 1.0),
        new("kg/min", Dimension.MassFlow, 1.0 / SecondsPerMinute),
        new("kg/h", Dimension.MassFlow, 1.0 / SecondsPerHour),
        new("g/min", Dimension.MassFlow, 1e-3 / SecondsPerMinute),
        new("kJ/mol", Dimension.MolarEnergy, 1.0),
        new("mA", Dimension.Current, 1.0),
        new("mV", Dimension.Potential, 1.0),
        new("NTU", Dimension.Turbidity, 1.0),
        new("NTU per g/L", Dimension.Cloudiness, 1.0),
        new("1/m", Dimension.LayerResistance, 1.0),
        new("m/kg", Dimension.CakeResistance, 1.0),
        new("g/mol", Dimension.MolarMass, 1.0),
        new("W/K", Dimension.Conductance, 1e-3),
        new("kW/K", Dimension.Conductance, 1.0),
        new("mS/cm", Dimension.Conductivity, 1.0),
        new("uS/cm", Dimension.Conductivity, 1e-3),
        new("darcy", Dimension.Area, 9.869233e-13),
    ];

    public static Unit? Find(string symbol)
    {
        foreach (Unit unit in All)
        {
            if (string.Equals(unit.Symbol, symbol, StringComparison.Ordinal))
            {
                return unit;
            }
        }

        return null;
    }

    /// <summary>The symbols that fit <paramref name="dimension"/>, for messages.</summary>
    public static string SymbolsOf(Dimension dimension) =>
        string.Join(", ", All.Where(unit => unit.Dimension == dimension).Select(unit => unit.Symbol));
}
