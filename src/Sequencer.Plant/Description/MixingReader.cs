using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads how what is dosed mixes into a tank: by a lag that is given, or by the impeller that makes it.</summary>
internal sealed class MixingReader(PlantNames names)
{
    /// <summary>A day: no mixing lag of a batch plant is slower.</summary>
    private static readonly NumberRange Seconds = new(0.0, 86_400.0);
    private static readonly NumberRange PositiveSeconds = new(1e-3, 86_400.0);

    /// <summary>Hydrofoils have 0.3, disc turbines 5 to 6 (textbooks of mixing, from memory).</summary>
    private static readonly NumberRange PowerNumber = new(0.05, 10.0);

    /// <summary>1/s, and m: beyond these nobody stirs a tank.</summary>
    private static readonly NumberRange Turns = new(0.05, 100.0);
    private static readonly NumberRange Metres = new(0.01, 20.0);

    private const double LitresPerCubicMetre = 1000.0;
    private const double WattsPerKilowatt = 1000.0;

    private static readonly string[] GivenByImpeller = ["lag", "power"];

    /// <param name="fields">the group <c>mixing</c></param>
    /// <param name="tank">its name</param>
    /// <param name="areaSquareMetres">of the tank</param>
    /// <param name="overflowLitres">of the tank</param>
    /// <param name="isPowerNeeded">solids settle in it</param>
    public MixingDescription Mixing(YamlFields fields, string tank, double areaSquareMetres, double overflowLitres, bool isPowerNeeded)
    {
        (double Lag, double Kilowatts)? impeller = fields.OptionalFields("impeller") is { } turning
            ? Impeller(turning, fields, tank, areaSquareMetres, overflowLitres / LitresPerCubicMetre / areaSquareMetres)
            : null;
        double lag = impeller?.Lag ?? fields.RequiredQuantity("lag", Dimension.Time, PositiveSeconds);
        string? agitator = fields.Has("agitator") || impeller is not null
            ? names.RequiredReference(fields, "agitator", "agitator", NameKind.Agitator)
            : null;
        MixingDescription mixing = new(
            agitator,
            fields.RequiredQuantity("dead_time", Dimension.Time, Seconds),
            lag,
            agitator is null ? lag : fields.RequiredQuantity("unmixed_lag", Dimension.Time, PositiveSeconds),
            impeller?.Kilowatts ?? (agitator is null ? 0.0
                : isPowerNeeded ? fields.RequiredQuantity("power", Dimension.Power, NumberRange.Positive)
                : fields.OptionalQuantity("power", Dimension.Power, NumberRange.Positive)?.Value ?? 0.0));
        fields.RejectUnknownKeys();
        return mixing;
    }

    /// <summary>Lag and power in water at full speed, the tank full: it blends slowest then.</summary>
    private static (double Lag, double Kilowatts) Impeller(YamlFields fields, YamlFields mixing, string tank, double areaSquareMetres, double depth)
    {
        double diameter = fields.RequiredQuantity("diameter", Dimension.Length, Metres);
        double turns = fields.RequiredQuantity("speed", Dimension.Frequency, Turns);
        double number = fields.RequiredNumber("power_number", PowerNumber);
        fields.RejectUnknownKeys();
        foreach (string key in GivenByImpeller.Where(mixing.Has))
        {
            mixing.Diagnostics.Add(YamlDiagnostics.NotAllowed(mixing.SpanOf(key), $"`{key}` beside `impeller`"));
            mixing.OptionalText(key);
        }

        double tankDiameter = Math.Sqrt(4.0 / Math.PI * areaSquareMetres);
        if (diameter >= tankDiameter && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf("diameter"), $"tank `{tank}`", "`diameter` of the impeller", "that of the tank"));
        }

        double blend = Hydraulics.Impeller.BlendSeconds(number, turns, diameter, tankDiameter, depth);
        return (Hydraulics.Impeller.LagSeconds(blend), Hydraulics.Impeller.Power(number, turns, diameter, WaterProperties.Density) / WattsPerKilowatt);
    }
}
