using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Sequencer.Language.Units;

/// <summary>
/// The units that a program may write (spec/language.md, Quantities and units). All factors are exact:
/// those of the SI are powers of ten, the rest are its minutes, hours, litres and bars (SI brochure, 9th
/// edition, tables 7 and 8; 1 bar = 100 kPa, Appendix of the 8th edition, table 8).
/// </summary>
public static class UnitTable
{
    private static readonly Rational Kilo = 1000;
    private static readonly Rational Milli = new(1, 1000);
    private static readonly Rational Minute = 60;
    private static readonly Rational Hour = 3600;

    /// <summary>Every unit, grouped by what it measures.</summary>
    public static ImmutableArray<Unit> All { get; } =
    [
        new("mL", Dimension.Volume, Milli),
        new("L", Dimension.Volume, 1),
        new("m3", Dimension.Volume, Kilo),
        new("mL/s", Dimension.VolumeFlow, Milli),
        new("L/s", Dimension.VolumeFlow, 1),
        new("L/min", Dimension.VolumeFlow, 1 / Minute),
        new("L/h", Dimension.VolumeFlow, 1 / Hour),
        new("m3/min", Dimension.VolumeFlow, Kilo / Minute),
        new("m3/h", Dimension.VolumeFlow, Kilo / Hour),
        new("ms", Dimension.Time, Milli),
        new("s", Dimension.Time, 1),
        new("min", Dimension.Time, Minute),
        new("h", Dimension.Time, Hour),
        new("mm", Dimension.Length, Milli),
        new("cm", Dimension.Length, new Rational(1, 100)),
        new("m", Dimension.Length, 1),
        new("g", Dimension.Mass, Milli),
        new("kg", Dimension.Mass, 1),
        new("Pa", Dimension.Pressure, 1),
        new("kPa", Dimension.Pressure, Kilo),
        new("bar", Dimension.Pressure, 100 * Kilo),
        new("mbar", Dimension.Pressure, 100),
        new("pH", Dimension.Acidity, 1),
        new("degC", Dimension.Temperature, 1),
        new("mV", Dimension.Voltage, Milli),
        new("V", Dimension.Voltage, 1),
        new("NTU", Dimension.Turbidity, 1),
        new("mg/L", Dimension.MassConcentration, Milli * Milli),
        new("g/L", Dimension.MassConcentration, Milli),
        new("uS/cm", Dimension.Conductivity, new Rational(1, 10_000)),
        new("mS/cm", Dimension.Conductivity, new Rational(1, 10)),
        new("rpm", Dimension.Rotation, 1 / Minute),
        new("%", Dimension.Number, new Rational(1, 100)),
    ];

    private static FrozenDictionary<string, Unit> BySymbol { get; } = All.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    public static Unit? Find(string symbol) => BySymbol.GetValueOrDefault(symbol);

    /// <summary>The units of one dimension, for a message.</summary>
    public static IEnumerable<Unit> Of(Dimension dimension) => All.Where(unit => unit.Dimension == dimension);
}
