using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Sites.Scenarios;

/// <summary>
/// Reads when something happens: a time since the start (<c>at</c>), or an event (<c>when</c>) with
/// its occurrence and a delay after it.
/// </summary>
internal static class MomentReading
{
    private static readonly string[] Subjects = ["unit", "value", "output", "alarm", "asked"];

    private const int MostOccurrences = 100_000;

    private static NumberRange Delays => new(0, 7 * 86_400);

    /// <summary>The moment of an action: <c>at</c> or <c>when</c> among its keys.</summary>
    public static Moment? OfAction(YamlFields action)
    {
        Quantity? at = action.OptionalQuantity("at", Dimension.Time, Delays);
        YamlFields? when = action.OptionalFields("when");
        if (action.Has("at") == action.Has("when"))
        {
            action.Diagnostics.Add(ScenarioFileDiagnostics.NeedsExactlyOne(action.Span, "the moment of an action", ["at", "when"], action.Has("at") ? 2 : 0));
            return null;
        }

        return at is not null
            ? new Moment(new Event.Start(), at.Value, at.Span)
            : when is null ? null : Event(when, "`when`");
    }

    public static Moment? Event(YamlFields fields, string what)
    {
        double delay = fields.OptionalQuantity("after", Dimension.Time, Delays)?.Value ?? 0;
        int occurrence = (int)(fields.OptionalWholeNumber("occurrence", 1, MostOccurrences) ?? 1);
        Event? happening = Happening(fields, what);
        fields.RejectUnknownKeys();
        return happening is null ? null : new Moment(happening, delay, fields.SpanOf(Subjects.First(fields.Has)), occurrence);
    }

    /// <summary>A state by its name; the first one where it is missing or wrong, which is reported.</summary>
    public static UnitState? State(YamlFields fields, string key) =>
        fields.OptionalWord(key, Enum.GetNames<UnitState>()) is string word ? Enum.Parse<UnitState>(word) : null;

    private static Event? Happening(YamlFields fields, string what)
    {
        Placed<string>? unit = fields.OptionalText("unit");
        Placed<string>? value = fields.OptionalText("value");
        Placed<string>? output = fields.OptionalText("output");
        Placed<string>? alarm = fields.OptionalText("alarm");
        Placed<string>? asked = fields.OptionalText("asked");
        int found = new[] { unit, value, output, alarm, asked }.Count(subject => subject is not null);
        if (found != 1)
        {
            fields.Diagnostics.Add(ScenarioFileDiagnostics.NeedsExactlyOne(fields.Span, $"the event of {what}", Subjects, found));
            return null;
        }

        return unit is not null ? OfUnit(fields, unit.Value)
            : value is not null ? OfValue(fields, value.Value)
            : output is not null ? new Event.OutputTurns(output.Value, fields.RequiredWord("turns", ["on", "off"]) == "on")
            : alarm is not null ? new Event.AlarmRaised(alarm.Value)
            : asked is not null ? new Event.PromptAsked(asked.Value)
            : null;
    }

    private static Event? OfUnit(YamlFields fields, string unit)
    {
        Placed<string>? step = fields.OptionalText("step");
        UnitState? state = State(fields, "state");
        if (step is null == state is null)
        {
            fields.Diagnostics.Add(ScenarioFileDiagnostics.NeedsExactlyOne(fields.Span, $"the event of `{unit}`", ["step", "state"], step is null ? 0 : 2));
            return null;
        }

        return step is not null ? new Event.StepActive(unit, step.Value) : new Event.StateReached(unit, state ?? default);
    }

    private static Event.ValueCrosses? OfValue(YamlFields fields, string name)
    {
        Placed<string>? above = fields.OptionalText("above");
        Placed<string>? below = fields.OptionalText("below");
        if (above is null == below is null)
        {
            fields.Diagnostics.Add(ScenarioFileDiagnostics.NeedsExactlyOne(fields.Span, $"the event of `{name}`", ["above", "below"], above is null ? 0 : 2));
            return null;
        }

        return MeasureReading.Read(above ?? below, fields.Diagnostics) is Measure bound
            ? new Event.ValueCrosses(name, above is not null, bound)
            : null;
    }
}
