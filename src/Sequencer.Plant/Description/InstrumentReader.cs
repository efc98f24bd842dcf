using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>Reads transmitters, switches and hand switches.</summary>
/// <param name="names">names of the plant</param>
/// <param name="drawnFromTanks">lines that draw from tanks</param>
/// <param name="hasRedox">the plant has chromium(VI) and sulphite, or cyanide and hypochlorite, which give a potential</param>
internal sealed class InstrumentReader(PlantNames names, IReadOnlySet<string> drawnFromTanks, bool hasRedox)
{
    private static readonly NumberRange LagSeconds = new(0.0, 86_400.0);
    private static readonly NumberRange TurnSeconds = new(1.0, 86_400.0);

    private static readonly string[] MeasuredWords = ["volume", "level", "pH", "temperature", "flow", "redox", "turbidity", "pressure", "turns", "conductivity"];

    private static readonly string[] TransmitterWords = [.. MeasuredWords.Where(word => word != Word(Measured.Turns))];

    /// <summary>A mark passes its switch in the last tenth of a turn (our own choice).</summary>
    private const double MarkFrom = 0.9;

    private readonly List<(string Tag, Measured Measures, Placed<string> Place)> _places = [];

    private readonly List<(string Tag, Placed<string> Other)> _pairs = [];

    public ImmutableArray<TransmitterDescription> Transmitters(YamlFields fields) =>
        [.. fields.Each("transmitters").Select(entry => Transmitter(entry.Name, entry.Fields)).OfType<TransmitterDescription>()];

    public ImmutableArray<SwitchDescription> Switches(YamlFields fields) =>
        [.. fields.Each("switches").Select(entry => Switch(entry.Name, entry.Fields)).OfType<SwitchDescription>()];

    public ImmutableArray<HandSwitchDescription> HandSwitches(YamlFields fields) =>
        [.. fields.Each("hand_switches").Select(entry => HandSwitch(entry.Name, entry.Fields))];

    /// <summary>After all names are known: does each place have what is measured there?</summary>
    public void CheckPlaces(DiagnosticBag diagnostics)
    {
        foreach ((string tag, Measured measures, Placed<string> place) in _places)
        {
            if (names.KindOf(place.Value) is { } kind && !Has(kind, measures))
            {
                diagnostics.Add(PlantDiagnostics.MeasuresNothing(place.Span, tag, Word(measures), place.Value));
            }
        }
    }

    /// <summary>A transmitter is in one pair: two of them would undo each other in part.</summary>
    public void CheckPairs(DiagnosticBag diagnostics)
    {
        HashSet<string> paired = new(StringComparer.Ordinal);
        foreach ((string tag, Placed<string> other) in _pairs)
        {
            if (other.Value == tag)
            {
                diagnostics.Add(PlantDiagnostics.NoPair(other, tag, "it is itself"));
            }
            else if (!paired.Add(tag) | !paired.Add(other.Value))
            {
                diagnostics.Add(PlantDiagnostics.NoPair(other, tag, "one of them is in a pair already"));
            }
        }
    }

    /// <summary>There is a tank's water with its solids.</summary>
    private bool IsCloudy(string place) => names.KindOf(place) is NameKind.Tank || drawnFromTanks.Contains(place);

    private static bool Has(NameKind kind, Measured measures) => kind switch
    {
        NameKind.Tank => measures is not (Measured.Flow or Measured.Pressure or Measured.Turns),
        NameKind.Pump => measures is Measured.Pressure or Measured.Turns,
        NameKind.Agitator or NameKind.Feeder => measures is Measured.Turns,
        NameKind.Reagent => measures is Measured.Volume,
        NameKind.Line => measures is Measured.Flow or Measured.Turbidity,
        NameKind.Drum or NameKind.Press => measures is Measured.Pressure or Measured.Flow,
        NameKind.SealWater => measures is Measured.Temperature or Measured.Flow,
        NameKind.SampleLoop => measures is Measured.Flow or Measured.Ph or Measured.Redox or Measured.Conductivity,
        _ => false,
    };

    private static string Word(Measured measures) => MeasuredWords[(int)measures];

    private static Dimension DimensionOf(Measured measures) => measures switch
    {
        Measured.Volume => Dimension.Volume,
        Measured.Level => Dimension.Length,
        Measured.Ph => Dimension.Acidity,
        Measured.Temperature => Dimension.Temperature,
        Measured.Redox => Dimension.Potential,
        Measured.Turbidity => Dimension.Turbidity,
        Measured.Pressure => Dimension.Pressure,
        Measured.Conductivity => Dimension.Conductivity,
        _ => Dimension.VolumeFlow,
    };

    private TransmitterDescription? Transmitter(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Transmitter);
        if (Measures(fields, TransmitterWords, name.Value, out Placed<string> place) is not { } measures)
        {
            return null;
        }

        Dimension dimension = DimensionOf(measures);
        double low = fields.RequiredQuantity("low", dimension, NumberRange.Any);
        double high = fields.RequiredQuantity("high", dimension, NumberRange.Any);
        Unit unit = fields.OptionalQuantity("high", dimension, NumberRange.Any)?.Unit ?? Unit.All.First(known => known.Dimension == dimension);
        bool isCloudiness = measures is Measured.Turbidity && IsCloudy(place.Value);
        double perSuspended = isCloudiness ? Optional(fields, "per_suspended", Dimension.Cloudiness, NumberRange.Positive) : 0.0;
        TransmitterDescription transmitter = new(
            name.Value,
            measures,
            place.Value,
            low,
            high,
            unit,
            Optional(fields, "lag", Dimension.Time, LagSeconds),
            Optional(fields, "dead_time", Dimension.Time, LagSeconds),
            Optional(fields, "noise", dimension, NumberRange.NotNegative),
            Optional(fields, "drift_per_day", dimension, NumberRange.Any),
            Optional(fields, "resolution", dimension, NumberRange.NotNegative),
            Optional(fields, "covered_from", Dimension.Volume, NumberRange.NotNegative),
            fields.OptionalWord("fails", ["low", "high"]) == "high",
            Steady(fields, measures, dimension, place.Value, perSuspended),
            perSuspended,
            Optional(fields, "offset", dimension, NumberRange.Any),
            SwappedWith(fields, name.Value));
        fields.RejectUnknownKeys();
        // A value that was missing or refused stands at its range's low end and has been reported.
        if (Math.Min(low, high) > NumberRange.Any.Low && low >= high)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf("low"), $"transmitter `{name.Value}`", "`low`", "`high`"));
        }

        return transmitter;
    }

    private string? SwappedWith(YamlFields fields, string tag)
    {
        if (fields.OptionalText("swapped_with") is not { } other)
        {
            return null;
        }

        names.Refer(other, "transmitter to swap wires with", NameKind.Transmitter);
        _pairs.Add((tag, other));
        return other.Value;
    }

    /// <summary>Needed where nothing in the model gives the value, allowed where it is a potential.</summary>
    private double? Steady(YamlFields fields, Measured measures, Dimension dimension, string place, double perSuspended) => measures switch
    {
        Measured.Redox when hasRedox => fields.OptionalQuantity("steady", dimension, NumberRange.Any)?.Value,
        Measured.Turbidity when perSuspended > 0.0 => null,
        Measured.Redox or Measured.Turbidity => fields.RequiredQuantity("steady", dimension, NumberRange.Any),
        Measured.Pressure when names.KindOf(place) is NameKind.Drum or NameKind.Press => null,
        Measured.Pressure => fields.RequiredQuantity("at_full_speed", dimension, NumberRange.Any),
        _ => null,
    };

    private SwitchDescription? Switch(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Contact);
        if (Measures(fields, MeasuredWords, name.Value, out Placed<string> place) is not { } measures)
        {
            return null;
        }

        if (measures is Measured.Turns)
        {
            SwitchDescription mark = new(
                name.Value,
                measures,
                place.Value,
                true,
                MarkFrom,
                0.0,
                fields.OptionalFlag("normally_closed", false),
                fields.RequiredQuantity("every", Dimension.Time, TurnSeconds));
            fields.RejectUnknownKeys();
            return mark;
        }

        Dimension dimension = DimensionOf(measures);
        bool above = fields.Has("above");
        if (above && fields.Has("below"))
        {
            fields.Diagnostics.Add(YamlDiagnostics.NotAllowed(fields.SpanOf("below"), "`below` beside `above`"));
            fields.OptionalText("below");
        }

        SwitchDescription threshold = new(
            name.Value,
            measures,
            place.Value,
            above,
            fields.RequiredQuantity(above ? "above" : "below", dimension, NumberRange.Any),
            Optional(fields, "hysteresis", dimension, NumberRange.NotNegative),
            fields.OptionalFlag("normally_closed", false),
            PerSuspended: measures is Measured.Turbidity ? fields.RequiredQuantity("per_suspended", Dimension.Cloudiness, NumberRange.Positive) : 0.0,
            AtFullSpeed: measures is Measured.Pressure && names.KindOf(place.Value) is not (NameKind.Drum or NameKind.Press) ? fields.RequiredQuantity("at_full_speed", dimension, NumberRange.Any) : null);
        fields.RejectUnknownKeys();
        if ((measures is Measured.Redox && !hasRedox) || (measures is Measured.Turbidity && !IsCloudy(place.Value)))
        {
            fields.Diagnostics.Add(PlantDiagnostics.NeverMoves(place.Span, name.Value, Word(measures), place.Value));
        }

        return threshold;
    }

    private HandSwitchDescription HandSwitch(Placed<string> name, YamlFields fields)
    {
        names.Declare(name, NameKind.Contact);
        HandSwitchDescription hand = new(name.Value, fields.OptionalFlag("normally_closed", false));
        fields.RejectUnknownKeys();
        return hand;
    }

    /// <summary>Null where it is not known: then no unit can be judged, and the mistake has been reported.</summary>
    private Measured? Measures(YamlFields fields, string[] words, string tag, out Placed<string> place)
    {
        bool isKnown = fields.HasOneOf("measures", words);
        Measured measures = (Measured)Array.IndexOf(MeasuredWords, fields.RequiredWord("measures", words));
        place = fields.RequiredText("in");
        names.Refer(place, "place to measure in", NameKind.Tank, NameKind.Reagent, NameKind.Line, NameKind.SampleLoop, NameKind.Pump, NameKind.Agitator, NameKind.Feeder, NameKind.Drum, NameKind.Press, NameKind.SealWater);
        if (!isKnown)
        {
            return null;
        }

        _places.Add((tag, measures, place));
        return measures;
    }

    private static double Optional(YamlFields fields, string key, Dimension dimension, NumberRange range) =>
        fields.OptionalQuantity(key, dimension, range)?.Value ?? 0.0;
}
