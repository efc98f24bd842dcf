using System.Collections.Immutable;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads lines.</summary>
internal sealed class LineReader(PlantNames names)
{
    private static readonly string[] FlowKeys = ["rate", "outlet", "pumped"];

    /// <summary>m; commercial steel, 0.045 mm (from memory).</summary>
    private const double DefaultRoughness = 0.045e-3;

    /// <summary>Sharp orifice 0.6, rounded outlet near 1 (common practice, no source).</summary>
    private static readonly NumberRange DischargeCoefficient = new(0.1, 1.0);

    public ImmutableArray<LineDescription> Lines(YamlFields fields) =>
        [.. fields.Each("lines").Select(entry => Line(entry.Name, entry.Fields))];

    private LineDescription Line(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Line);
        Placed<string> from = fields.RequiredText("from");
        if (fields.Has("dosing_line"))
        {
            names.Refer(from, "supply or reagent", NameKind.Supply, NameKind.Reagent);
        }
        else
        {
            names.Refer(from, "supply, reagent or tank", NameKind.Supply, NameKind.Reagent, NameKind.Tank);
        }

        ImmutableArray<string> through = names.References(fields, "through", "pump, feeder or valve", NameKind.Pump, NameKind.Feeder, NameKind.Valve);
        ImmutableArray<string> notThrough = names.References(fields, "not_through", "valve", NameKind.Valve);
        string? dosingLine = fields.Has("dosing_line") ? names.RequiredReference(fields, "dosing_line", "dosing line", NameKind.DosingLine) : null;
        Quantity? rate = fields.OptionalQuantity("rate", Dimension.VolumeFlow, NumberRange.Positive);
        OutletDescription? outlet = fields.OptionalFields("outlet") is { } free ? Outlet(free) : null;
        PumpedDescription? pumped = fields.OptionalFields("pumped") is { } curve ? Pumped(curve, name.Value) : null;
        int told = FlowKeys.Count(fields.Has) + through.Count(drive => names.KindOf(drive) is NameKind.Feeder);
        if (told != 1 || (outlet is not null && names.KindOf(from.Value) is not (NameKind.Tank or null)))
        {
            fields.Diagnostics.Add(PlantDiagnostics.NeedsRateOrOutlet(name.Span, name.Value));
        }

        DrawPoint draws = Draws(fields, from);
        LevelControlDescription? byLevel = fields.OptionalFields("by_level") is { } control ? ByLevel(control, fields, from, name.Value) : null;
        Placed<string> to = fields.RequiredText("to");
        if (dosingLine is not null)
        {
            names.Refer(to, "tank", NameKind.Tank);
        }

        ImmutableArray<Placed<string>> keepsHighest = [.. fields.EachText("keeps_highest")];
        if (keepsHighest.Any(kept => kept.Value is not (LineDescription.Flow or LineDescription.InADay)) && names.KindOf(from.Value) is not (NameKind.Tank or null))
        {
            fields.Diagnostics.Add(YamlDiagnostics.NotAllowed(fields.SpanOf("keeps_highest"), "more than `flow` and `in_a_day` kept of a line that draws from no tank"));
        }

        fields.RejectUnknownKeys();
        return new LineDescription(
            name.Value, from.Value, to.Value, rate?.Value ?? 0.0, outlet, pumped, through, notThrough, dosingLine, draws, byLevel, keepsHighest, name.Span);
    }

    private LevelControlDescription ByLevel(YamlFields control, YamlFields line, Placed<string> from, string name)
    {
        LevelControlDescription described = new(
            control.RequiredQuantity("shut_at", Dimension.Volume, NumberRange.Positive),
            control.RequiredQuantity("open_at", Dimension.Volume, NumberRange.Positive));
        control.RejectUnknownKeys();
        VolumeOrder.Check(control, $"line `{name}`", ("shut_at", described.ShutLitres), ("open_at", described.OpenLitres));
        if (names.KindOf(from.Value) is not (NameKind.Tank or null))
        {
            line.Diagnostics.Add(YamlDiagnostics.NotAllowed(line.SpanOf("by_level"), "`by_level` in a line that draws from no tank"));
        }

        return described;
    }

    private DrawPoint Draws(YamlFields fields, Placed<string> from)
    {
        if (fields.Has("draws_at") && fields.Has("draws_below"))
        {
            fields.Diagnostics.Add(YamlDiagnostics.NotAllowed(fields.SpanOf("draws_below"), "`draws_below` beside `draws_at`"));
        }

        Quantity? below = fields.OptionalQuantity("draws_below", Dimension.Length, NumberRange.NotNegative);
        Quantity? at = fields.OptionalQuantity("draws_at", Dimension.Length, NumberRange.NotNegative);
        if ((below ?? at) is not null && names.KindOf(from.Value) is not (NameKind.Tank or null))
        {
            fields.Diagnostics.Add(YamlDiagnostics.NotAllowed(fields.SpanOf(below is null ? "draws_at" : "draws_below"), "where a line draws that draws from no tank"));
        }

        return below is not null ? new DrawPoint(below.Value, true) : new DrawPoint(at?.Value ?? 0.0, false);
    }

    private static PumpedDescription Pumped(YamlFields fields, string line)
    {
        PumpedDescription pumped = new(
            fields.RequiredQuantity("shut_off", Dimension.Length, NumberRange.Positive),
            fields.RequiredQuantity("rated", Dimension.VolumeFlow, NumberRange.Positive),
            fields.RequiredQuantity("head", Dimension.Length, NumberRange.Positive),
            fields.OptionalQuantity("lift", Dimension.Length, NumberRange.Any)?.Value ?? 0.0,
            fields.RequiredQuantity("bore", Dimension.Length, NumberRange.Positive),
            fields.RequiredQuantity("length", Dimension.Length, NumberRange.Positive),
            fields.OptionalQuantity("roughness", Dimension.Length, NumberRange.NotNegative)?.Value ?? DefaultRoughness,
            fields.OptionalNumber("fittings", NumberRange.NotNegative) ?? 0.0);
        fields.RejectUnknownKeys();
        if (pumped.RatedMetres >= pumped.ShutOffMetres && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf("head"), $"line `{line}`", "`head`", "`shut_off`"));
        }

        return pumped;
    }

    private static OutletDescription Outlet(YamlFields fields)
    {
        OutletDescription outlet = new(
            fields.RequiredQuantity("bore", Dimension.Length, NumberRange.Positive),
            fields.RequiredNumber("coefficient", DischargeCoefficient));
        fields.RejectUnknownKeys();
        return outlet;
    }
}
