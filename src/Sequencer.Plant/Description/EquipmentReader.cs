using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Plant.Settling;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads tanks, drives, lines, dosing lines and sample loops.</summary>
internal sealed class EquipmentReader(PlantNames names)
{
    /// <summary>A day: no valve, motor or mixing lag of a batch plant is slower.</summary>
    private static readonly NumberRange Seconds = new(0.0, 86_400.0);
    private static readonly NumberRange PositiveSeconds = new(1e-3, 86_400.0);

    private const double MilligramsPerGram = 1000.0;

    private static readonly string[] FlowKeys = ["rate", "outlet", "pumped"];

    /// <summary>Heavier than water, or it would rise.</summary>
    private static readonly NumberRange GrainMilligramsPerLitre = new(1.01e6, 2e7);

    /// <summary>m; commercial steel, 0.045 mm (from memory).</summary>
    private const double DefaultRoughness = 0.045e-3;

    private static readonly NumberRange FlocMetres = new(1e-6, 0.02);

    /// <summary>Sharp orifice 0.6, rounded outlet near 1 (common practice, no source).</summary>
    private static readonly NumberRange DischargeCoefficient = new(0.1, 1.0);

    public ImmutableArray<TankDescription> Tanks(YamlFields fields) =>
        [.. fields.Each("tanks").Select(entry => Tank(entry.Name, entry.Fields))];

    /// <summary>Pumps, then agitators, then valves, each in written order.</summary>
    public ImmutableArray<DriveDescription> Drives(YamlFields fields) =>
    [
        .. fields.Each("pumps").Select(entry => Motor(entry.Name, entry.Fields, DriveKind.Pump, NameKind.Pump)),
        .. fields.Each("agitators").Select(entry => Motor(entry.Name, entry.Fields, DriveKind.Agitator, NameKind.Agitator)),
        .. fields.Each("valves").Select(entry => Valve(entry.Name, entry.Fields)),
    ];

    public ImmutableArray<LineDescription> Lines(YamlFields fields) =>
        [.. fields.Each("lines").Select(entry => Line(entry.Name, entry.Fields))];

    public ImmutableArray<DosingLineDescription> DosingLines(YamlFields fields) =>
        [.. fields.Each("dosing_lines").Select(entry => DosingLine(entry.Name, entry.Fields))];

    public ImmutableArray<SampleLoopDescription> SampleLoops(YamlFields fields) =>
        [.. fields.Each("sample_loops").Select(entry => SampleLoop(entry.Name, entry.Fields))];

    private TankDescription Tank(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Tank);
        YamlFields starts = fields.RequiredFields("starts");
        double area = fields.RequiredQuantity("area", Dimension.Area, NumberRange.Positive);
        double overflow = fields.RequiredQuantity("overflow", Dimension.Volume, NumberRange.Positive);
        MixingDescription mixing = new MixingReader(names).Mixing(fields.RequiredFields("mixing"), name.Value, area, overflow, fields.Has("settling"));
        SettlingDescription? settling = fields.OptionalFields("settling") is { } solids ? Settling(solids) : null;
        TankDescription tank = new(
            name.Value,
            area,
            Levels(fields),
            overflow,
            fields.RequiredQuantity("heel", Dimension.Volume, NumberRange.Positive),
            starts.RequiredQuantity("volume", Dimension.Volume, NumberRange.Positive),
            names.RequiredReference(starts, "water", "supply", NameKind.Supply),
            fields.OptionalQuantity("heat_loss", Dimension.Time, NumberRange.Positive)?.Value,
            fields.OptionalQuantity("air_equalises_in", Dimension.Time, NumberRange.Positive)?.Value,
            mixing,
            settling,
            name.Span);
        starts.RejectUnknownKeys();
        fields.RejectUnknownKeys();
        CheckOrder(fields, $"tank `{name.Value}`", ("heel", tank.HeelLitres), ("overflow", tank.OverflowLitres));
        CheckOrder(fields, $"tank `{name.Value}`", ("heel", tank.HeelLitres), ("starts", tank.StartLitres));
        CheckOrder(fields, $"tank `{name.Value}`", ("starts", tank.StartLitres), ("overflow", tank.OverflowLitres));
        return tank;
    }

    private static ImmutableArray<LevelPoint> Levels(YamlFields fields)
    {
        ImmutableArray<LevelPoint>.Builder points = ImmutableArray.CreateBuilder<LevelPoint>();
        LevelPoint below = default;
        foreach (YamlFields item in fields.EachItem("levels"))
        {
            LevelPoint point = new(
                item.RequiredQuantity("at", Dimension.Length, NumberRange.Positive),
                item.RequiredQuantity("holds", Dimension.Volume, NumberRange.Positive));
            item.RejectUnknownKeys();
            if ((point.Metres <= below.Metres || point.Litres <= below.Litres) && !fields.Diagnostics.HasErrors)
            {
                fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(item.SpanOf("at"), "`levels`", "each level and what it holds", "the next"));
            }

            points.Add(point);
            below = point;
        }

        return points.ToImmutable();
    }

    private static void CheckOrder(YamlFields fields, string what, (string Key, double Litres) lower, (string Key, double Litres) higher)
    {
        // A value that was missing or refused stands at its range's low end and has been reported.
        bool areRead = Math.Min(lower.Litres, higher.Litres) > NumberRange.Positive.Low;
        if (areRead && lower.Litres >= higher.Litres)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf(lower.Key), what, Shown(lower), Shown(higher)));
        }
    }

    private static string Shown((string Key, double Litres) value) =>
        string.Create(CultureInfo.InvariantCulture, $"`{value.Key}` ({value.Litres:0.###} L)");

    private static SettlingDescription Settling(YamlFields fields)
    {
        SettlingDescription settling = new(
            fields.RequiredQuantity("floc_density", Dimension.MassConcentration, NumberRange.Positive) / MilligramsPerGram,
            fields.RequiredQuantity("grain_density", Dimension.MassConcentration, GrainMilligramsPerLitre) / MilligramsPerGram,
            fields.RequiredQuantity("floc_size", Dimension.Length, FlocMetres),
            fields.RequiredQuantity("bed_density", Dimension.MassConcentration, NumberRange.Positive) / MilligramsPerGram,
            fields.OptionalQuantity("breaking", Dimension.Time, NumberRange.Positive)?.Value ?? Flocculation.Breaking,
            RetainedReader.Read(fields));
        fields.RejectUnknownKeys();
        if (settling.FlocGramsPerLitre >= settling.BedGramsPerLitre && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf("floc_density"), "`settling`", "`floc_density`", "`bed_density`"));
        }

        return settling;
    }

    private DriveDescription Motor(Placed<string> name, YamlFields fields, DriveKind kind, NameKind nameKind)
    {
        names.Declare(name, nameKind);
        DriveDescription drive = new(
            name.Value,
            kind,
            fields.RequiredQuantity("starts_in", Dimension.Time, PositiveSeconds),
            false,
            Feedback(fields, "running"),
            null,
            SpeedFrom(fields));
        fields.RejectUnknownKeys();
        return drive;
    }

    private DriveDescription Valve(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Valve);
        DriveDescription drive = new(
            name.Value,
            DriveKind.Valve,
            fields.RequiredQuantity("travel", Dimension.Time, PositiveSeconds),
            fields.OptionalWord("de_energised", ["closed", "open"]) == "open",
            Feedback(fields, "open_switch"),
            Feedback(fields, "closed_switch"));
        fields.RejectUnknownKeys();
        return drive;
    }

    private string? SpeedFrom(YamlFields fields)
    {
        if (fields.OptionalText("speed_from") is not { } tag)
        {
            return null;
        }

        names.Declare(tag, NameKind.Setpoint);
        return tag.Value;
    }

    private string? Feedback(YamlFields fields, string key)
    {
        if (fields.OptionalText(key) is not { } tag)
        {
            return null;
        }

        names.Declare(tag, NameKind.Contact);
        return tag.Value;
    }

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

        ImmutableArray<string> through = names.References(fields, "through", "pump or valve", NameKind.Pump, NameKind.Valve);
        ImmutableArray<string> notThrough = names.References(fields, "not_through", "valve", NameKind.Valve);
        string? dosingLine = fields.Has("dosing_line") ? names.RequiredReference(fields, "dosing_line", "dosing line", NameKind.DosingLine) : null;
        Quantity? rate = fields.OptionalQuantity("rate", Dimension.VolumeFlow, NumberRange.Positive);
        OutletDescription? outlet = fields.OptionalFields("outlet") is { } free ? Outlet(free) : null;
        PumpedDescription? pumped = fields.OptionalFields("pumped") is { } curve ? Pumped(curve, name.Value) : null;
        int told = FlowKeys.Count(fields.Has);
        if (told != 1 || (outlet is not null && names.KindOf(from.Value) is not (NameKind.Tank or null)))
        {
            fields.Diagnostics.Add(PlantDiagnostics.NeedsRateOrOutlet(name.Span, name.Value));
        }

        DrawPoint draws = Draws(fields, from);
        Placed<string> to = fields.RequiredText("to");
        if (dosingLine is not null)
        {
            names.Refer(to, "tank", NameKind.Tank);
        }

        fields.RejectUnknownKeys();
        return new LineDescription(name.Value, from.Value, to.Value, rate?.Value ?? 0.0, outlet, pumped, through, notThrough, dosingLine, draws, name.Span);
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

    private DosingLineDescription DosingLine(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.DosingLine);
        DosingLineDescription line = new(
            name.Value,
            fields.RequiredQuantity("holds", Dimension.Volume, NumberRange.Positive),
            fields.OptionalQuantity("sets_after", Dimension.Time, PositiveSeconds)?.Value);
        fields.RejectUnknownKeys();
        return line;
    }

    private SampleLoopDescription SampleLoop(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.SampleLoop);
        SampleLoopDescription loop = new(
            name.Value,
            names.RequiredReference(fields, "from", "tank", NameKind.Tank),
            names.RequiredReference(fields, "pump", "pump", NameKind.Pump),
            fields.RequiredQuantity("flow", Dimension.VolumeFlow, NumberRange.Positive),
            fields.RequiredQuantity("delay", Dimension.Time, Seconds),
            fields.RequiredQuantity("needs", Dimension.Volume, NumberRange.NotNegative));
        fields.RejectUnknownKeys();
        return loop;
    }
}
