using System.Collections.Immutable;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads filter presses.</summary>
internal sealed class PressReader(PlantNames names)
{
    private const double PascalsPerKilopascal = 1000.0;

    /// <summary>kPa; above the air's pressure.</summary>
    private static readonly NumberRange Pressure = new(1.0, 1e5);

    public ImmutableArray<PressDescription> Presses(YamlFields fields) => [.. fields.Each("presses").Select(entry => Press(entry.Name, entry.Fields))];

    private PressDescription Press(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Press);
        string what = $"press `{name.Value}`";
        YamlFields feed = fields.RequiredFields("feed");
        YamlFields cloth = fields.RequiredFields("cloth");
        YamlFields cake = fields.RequiredFields("cake");
        LayerReading layer = LayerReading.OfCake(cake, what);
        PressDescription press = new(
            name.Value,
            names.RequiredReference(fields, "from", "tank", NameKind.Tank),
            names.RequiredReference(fields, "filtrate_to", "tank", NameKind.Tank),
            names.References(feed, "through", "pump or valve", NameKind.Pump, NameKind.Valve),
            feed.RequiredQuantity("rate", Dimension.VolumeFlow, NumberRange.Positive),
            PascalsPerKilopascal * feed.RequiredQuantity("stalls_at", Dimension.Pressure, Pressure),
            fields.RequiredQuantity("area", Dimension.Area, NumberRange.Positive),
            fields.RequiredQuantity("chambers", Dimension.Volume, NumberRange.Positive),
            LayerReading.ClothResistance(cloth),
            LayerReading.HoldsBack(cloth),
            cloth.RequiredQuantity("closes_at", Dimension.Length, NumberRange.Positive),
            layer.Resistance,
            layer.Compressibility,
            layer.DryDensity,
            layer.GrainDensity,
            RetainedReader.Read(cake),
            fields.OptionalFields("squeeze") is { } membranes ? Squeeze(membranes, layer, what) : null,
            names.RequiredReference(fields, "opened_by", "pump, agitator or valve", NameKind.Pump, NameKind.Agitator, NameKind.Valve),
            name.Span);
        foreach (YamlFields part in new[] { feed, cloth, cake, fields })
        {
            part.RejectUnknownKeys();
        }

        return press;
    }

    /// <summary>A squeezed cake is denser than a filtered one and less dense than its grains.</summary>
    private SqueezeDescription Squeeze(YamlFields fields, LayerReading cake, string what)
    {
        SqueezeDescription squeeze = new(
            names.RequiredReference(fields, "valve", "valve", NameKind.Valve),
            PascalsPerKilopascal * fields.RequiredQuantity("pressure", Dimension.Pressure, Pressure),
            LayerReading.Density(fields, "dry_density"));
        fields.RejectUnknownKeys();
        if (squeeze.CakeKilogramsPerCubicMetre <= cake.DryDensity && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf("dry_density"), what, "`dry_density` of `cake`", "`dry_density` of `squeeze`"));
        }

        if (squeeze.CakeKilogramsPerCubicMetre >= cake.GrainDensity && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf("dry_density"), what, "`dry_density` of `squeeze`", "`grain_density`"));
        }

        return squeeze;
    }
}
