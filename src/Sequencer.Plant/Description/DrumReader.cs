using System.Collections.Immutable;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads drum filters.</summary>
internal sealed class DrumReader(PlantNames names)
{
    private const double PascalsPerKilopascal = 1000.0;

    private static readonly NumberRange TurnSeconds = new(1.0, 86_400.0);

    /// <summary>A pump pulls below the air's pressure and never down to none.</summary>
    private static readonly NumberRange Vacuum = new(-101.0, -0.1);

    private static readonly NumberRange Share = new(0.01, 0.99);

    /// <summary>From 0.1 millidarcy to a thousand darcys: beyond these nobody filters.</summary>
    private static readonly NumberRange Permeability = new(1e-16, 1e-9);

    /// <summary>kg/m3: diatomite and perlite weigh 2.0 to 2.4 kg/L of grain (common practice, no source).</summary>
    private const double DefaultAidGrain = 2200.0;

    /// <summary>C; makers of liquid-ring pumps tell their vacuum for seal water of 15 C (common practice, no source).</summary>
    private const double RatedCelsius = 15.0;

    public ImmutableArray<DrumDescription> Drums(YamlFields fields) => [.. fields.Each("drums").Select(entry => Drum(entry.Name, entry.Fields))];

    private DrumDescription Drum(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Drum);
        YamlFields cloth = fields.RequiredFields("cloth");
        YamlFields coat = fields.RequiredFields("coat");
        YamlFields cake = fields.RequiredFields("cake");
        YamlFields vacuum = fields.RequiredFields("vacuum");
        LayerReading layer = LayerReading.OfCake(cake, $"drum `{name.Value}`");
        DrumDescription drum = new(
            name.Value,
            names.RequiredReference(fields, "trough", "tank", NameKind.Tank),
            names.RequiredReference(fields, "filtrate_to", "tank", NameKind.Tank),
            names.RequiredReference(fields, "turned_by", "pump or agitator", NameKind.Pump, NameKind.Agitator),
            fields.RequiredQuantity("turn", Dimension.Time, TurnSeconds),
            fields.RequiredQuantity("area", Dimension.Area, NumberRange.Positive),
            fields.RequiredQuantity("submerged", Dimension.Fraction, Share),
            fields.RequiredQuantity("pipes_carry", Dimension.VolumeFlow, NumberRange.Positive),
            names.RequiredReference(vacuum, "pump", "pump or agitator", NameKind.Pump, NameKind.Agitator),
            -PascalsPerKilopascal * vacuum.RequiredQuantity("deepest", Dimension.Pressure, Vacuum),
            -PascalsPerKilopascal * vacuum.RequiredQuantity("bare_cloth", Dimension.Pressure, Vacuum),
            vacuum.RequiredQuantity("pulls_down_in", Dimension.Time, TurnSeconds),
            -PascalsPerKilopascal * vacuum.RequiredQuantity("holds_from", Dimension.Pressure, Vacuum),
            names.RequiredReference(fields, "knife", "tank", NameKind.Tank),
            LayerReading.ClothResistance(cloth),
            LayerReading.HoldsBack(cloth),
            coat.RequiredQuantity("permeability", Dimension.Area, Permeability),
            LayerReading.Density(coat, "dry_density"),
            LayerReading.Grain(coat, DefaultAidGrain),
            coat.RequiredQuantity("closes_at", Dimension.Length, NumberRange.Positive),
            layer.Resistance,
            layer.Compressibility,
            layer.DryDensity,
            layer.GrainDensity,
            RetainedReader.Read(cake),
            vacuum.OptionalFields("seal_water") is { } water ? SealWater(water) : null,
            name.Span);
        foreach (YamlFields part in new[] { cloth, coat, cake, vacuum, fields })
        {
            part.RejectUnknownKeys();
        }

        LayerReading.CheckGrain(coat, $"drum `{name.Value}`", drum.CoatKilogramsPerCubicMetre, drum.CoatGrainKilogramsPerCubicMetre);

        // A value that was missing or refused stands at its range's low end and has been reported.
        if (drum.BareClothPascals >= drum.DeepestPascals && drum.DeepestPascals > 0.0 && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(vacuum.SpanOf("bare_cloth"), $"drum `{name.Value}`", "`deepest`", "`bare_cloth`"));
        }

        return drum;
    }

    private SealWaterDescription SealWater(YamlFields fields)
    {
        YamlFields cooler = fields.RequiredFields("cooler");
        Placed<string> name = fields.RequiredText("name");
        names.Declare(name, NameKind.SealWater);
        SealWaterDescription water = new(
            name.Value,
            fields.RequiredQuantity("holds", Dimension.Volume, NumberRange.Positive),
            fields.RequiredQuantity("heat", Dimension.Power, NumberRange.NotNegative),
            fields.RequiredQuantity("flow", Dimension.VolumeFlow, NumberRange.Positive),
            fields.OptionalQuantity("rated_at", Dimension.Temperature, WaterReader.LiquidCelsius)?.Value ?? RatedCelsius,
            cooler.RequiredQuantity("conductance", Dimension.Conductance, NumberRange.Positive),
            cooler.RequiredQuantity("flow", Dimension.VolumeFlow, NumberRange.Positive),
            names.RequiredReference(cooler, "water", "supply", NameKind.Supply),
            names.References(cooler, "through", "pump or valve", NameKind.Pump, NameKind.Valve));
        cooler.RejectUnknownKeys();
        fields.RejectUnknownKeys();
        return water;
    }
}
