using System.Collections.Immutable;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads drum filters.</summary>
internal sealed class DrumReader(PlantNames names)
{
    private const double PascalsPerKilopascal = 1000.0;
    private const double MilligramsPerGram = 1000.0;

    private static readonly NumberRange TurnSeconds = new(1.0, 86_400.0);

    /// <summary>A pump pulls below the air's pressure and never down to none.</summary>
    private static readonly NumberRange Vacuum = new(-101.0, -0.1);

    private static readonly NumberRange Share = new(0.01, 0.99);
    private static readonly NumberRange Compressibility = new(0.0, 1.0);

    /// <summary>From 0.1 millidarcy to a thousand darcys: beyond these nobody filters.</summary>
    private static readonly NumberRange Permeability = new(1e-16, 1e-9);

    /// <summary>kg/m3: diatomite and perlite weigh 2.0 to 2.4 kg/L of grain (common practice, no source).</summary>
    private const double DefaultAidGrain = 2200.0;

    /// <summary>kg/m3: clays and silica some 2.6, hydroxides 2.4 to 3.4 kg/L of grain (from memory).</summary>
    private const double DefaultSolidGrain = 2600.0;

    private static readonly NumberRange LayerResistance = new(1e6, 1e14);
    private static readonly NumberRange CakeResistance = new(1e3, 1e16);

    public ImmutableArray<DrumDescription> Drums(YamlFields fields) => [.. fields.Each("drums").Select(entry => Drum(entry.Name, entry.Fields))];

    private DrumDescription Drum(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Drum);
        YamlFields cloth = fields.RequiredFields("cloth");
        YamlFields coat = fields.RequiredFields("coat");
        YamlFields cake = fields.RequiredFields("cake");
        YamlFields vacuum = fields.RequiredFields("vacuum");
        DrumDescription drum = new(
            name.Value,
            Tank(fields, "trough"),
            Tank(fields, "filtrate_to"),
            Motor(fields, "turned_by"),
            fields.RequiredQuantity("turn", Dimension.Time, TurnSeconds),
            fields.RequiredQuantity("area", Dimension.Area, NumberRange.Positive),
            fields.RequiredQuantity("submerged", Dimension.Fraction, Share),
            fields.RequiredQuantity("pipes_carry", Dimension.VolumeFlow, NumberRange.Positive),
            Motor(vacuum, "pump"),
            -PascalsPerKilopascal * vacuum.RequiredQuantity("deepest", Dimension.Pressure, Vacuum),
            -PascalsPerKilopascal * vacuum.RequiredQuantity("bare_cloth", Dimension.Pressure, Vacuum),
            vacuum.RequiredQuantity("pulls_down_in", Dimension.Time, TurnSeconds),
            -PascalsPerKilopascal * vacuum.RequiredQuantity("holds_from", Dimension.Pressure, Vacuum),
            Tank(fields, "knife"),
            cloth.RequiredQuantity("resistance", Dimension.LayerResistance, LayerResistance),
            cloth.RequiredQuantity("holds_back", Dimension.Fraction, Share),
            coat.RequiredQuantity("permeability", Dimension.Area, Permeability),
            coat.RequiredQuantity("dry_density", Dimension.MassConcentration, NumberRange.Positive) / MilligramsPerGram,
            GrainDensity(coat, DefaultAidGrain),
            coat.RequiredQuantity("closes_at", Dimension.Length, NumberRange.Positive),
            cake.RequiredQuantity("resistance", Dimension.CakeResistance, CakeResistance),
            cake.RequiredNumber("compressibility", Compressibility),
            cake.RequiredQuantity("dry_density", Dimension.MassConcentration, NumberRange.Positive) / MilligramsPerGram,
            GrainDensity(cake, DefaultSolidGrain),
            RetainedReader.Read(cake),
            name.Span);
        foreach (YamlFields part in new[] { cloth, coat, cake, vacuum, fields })
        {
            part.RejectUnknownKeys();
        }

        CheckGrain(coat, name.Value, drum.CoatKilogramsPerCubicMetre, drum.CoatGrainKilogramsPerCubicMetre);
        CheckGrain(cake, name.Value, drum.CakeKilogramsPerCubicMetre, drum.CakeGrainKilogramsPerCubicMetre);

        // A value that was missing or refused stands at its range's low end and has been reported.
        if (drum.BareClothPascals >= drum.DeepestPascals && drum.DeepestPascals > 0.0 && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(vacuum.SpanOf("bare_cloth"), $"drum `{name.Value}`", "`deepest`", "`bare_cloth`"));
        }

        return drum;
    }

    private static double GrainDensity(YamlFields layer, double otherwise) =>
        layer.OptionalQuantity("grain_density", Dimension.MassConcentration, NumberRange.Positive)?.Value / MilligramsPerGram ?? otherwise;

    private static void CheckGrain(YamlFields layer, string drum, double dry, double grain)
    {
        if (dry >= grain)
        {
            layer.Diagnostics.Add(PlantDiagnostics.OutOfOrder(layer.SpanOf("dry_density"), $"drum `{drum}`", "`dry_density`", "`grain_density`"));
        }
    }

    private string Tank(YamlFields fields, string key)
    {
        Placed<string> name = fields.RequiredText(key);
        names.Refer(name, "tank", NameKind.Tank);
        return name.Value;
    }

    private string Motor(YamlFields fields, string key)
    {
        Placed<string> name = fields.RequiredText(key);
        names.Refer(name, "pump or agitator", NameKind.Pump, NameKind.Agitator);
        return name.Value;
    }
}
