using System.Collections.Immutable;
using Sequencer.Plant.Settling;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Reads tanks, drives, dosing lines and sample loops.</summary>
internal sealed class EquipmentReader(PlantNames names)
{
    /// <summary>A day: no valve, motor or mixing lag of a batch plant is slower.</summary>
    private static readonly NumberRange Seconds = new(0.0, 86_400.0);
    private static readonly NumberRange PositiveSeconds = new(1e-3, 86_400.0);

    private const double MilligramsPerGram = 1000.0;
    private const double PascalsPerKilopascal = 1000.0;

    /// <summary>Heavier than water, or it would rise.</summary>
    private static readonly NumberRange GrainMilligramsPerLitre = new(1.01e6, 2e7);

    private static readonly NumberRange FlocMetres = new(1e-6, 0.02);

    public ImmutableArray<TankDescription> Tanks(YamlFields fields) =>
        [.. fields.Each("tanks").Select(entry => Tank(entry.Name, entry.Fields))];

    /// <summary>Pumps, then agitators, then valves, then feeders, each in written order.</summary>
    public ImmutableArray<DriveDescription> Drives(YamlFields fields) =>
    [
        .. fields.Each("pumps").Select(entry => Motor(entry.Name, entry.Fields, DriveKind.Pump, NameKind.Pump)),
        .. fields.Each("agitators").Select(entry => Motor(entry.Name, entry.Fields, DriveKind.Agitator, NameKind.Agitator)),
        .. fields.Each("valves").Select(entry => Valve(entry.Name, entry.Fields)),
        .. fields.Each("feeders").Select(entry => Motor(entry.Name, entry.Fields, DriveKind.Feeder, NameKind.Feeder)),
    ];

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
            fields.OptionalFields("aeration") is { } air ? Aeration(air, name.Value) : null,
            mixing,
            settling,
            fields.OptionalFlag("treats_batches", false),
            name.Span);
        starts.RejectUnknownKeys();
        fields.RejectUnknownKeys();
        VolumeOrder.Check(fields, $"tank `{name.Value}`", ("heel", tank.HeelLitres), ("overflow", tank.OverflowLitres));
        VolumeOrder.Check(fields, $"tank `{name.Value}`", ("heel", tank.HeelLitres), ("starts", tank.StartLitres));
        VolumeOrder.Check(fields, $"tank `{name.Value}`", ("starts", tank.StartLitres), ("overflow", tank.OverflowLitres));
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

    private AerationDescription Aeration(YamlFields fields, string tank)
    {
        AerationDescription aeration = new(
            [names.RequiredReference(fields, "blower", "pump", NameKind.Pump), .. names.References(fields, "alike", "pump", NameKind.Pump)],
            PascalsPerKilopascal * fields.RequiredQuantity("shut_off", Dimension.Pressure, NumberRange.Positive),
            fields.RequiredQuantity("rated", Dimension.VolumeFlow, NumberRange.Positive),
            PascalsPerKilopascal * fields.RequiredQuantity("pressure", Dimension.Pressure, NumberRange.Positive),
            fields.RequiredQuantity("equalises_in", Dimension.Time, PositiveSeconds),
            fields.RequiredQuantity("lag", Dimension.Time, PositiveSeconds));
        fields.RejectUnknownKeys();
        if (aeration.RatedPascals >= aeration.ShutOffPascals && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf("pressure"), $"tank `{tank}`", "`pressure`", "`shut_off`"));
        }

        return aeration;
    }

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
            SpeedFrom(fields),
            kind == DriveKind.Feeder ? fields.RequiredQuantity("gives", Dimension.MassFlow, NumberRange.Positive) : 0.0);
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
