using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Sites.Scenarios;

/// <summary>Reads what must come of a scenario: one statement an entry of <c>expect</c>.</summary>
internal static class ExpectationReading
{
    private static readonly string[] Subjects = ["unit", "alarm", "value", "output", "requirement"];

    private static NumberRange Times => new(0.1, 7 * 86_400);

    private static NumberRange Moments => new(0, 7 * 86_400);

    public static IEnumerable<Expectation> Each(YamlFields file)
    {
        foreach (YamlFields fields in file.EachItem("expect"))
        {
            Expectation? expectation = One(fields);
            Moment? since = fields.OptionalFields("since") is YamlFields moment ? MomentReading.Event(moment, "`since`") : null;
            fields.RejectUnknownKeys();
            if (expectation is not null)
            {
                yield return expectation with { Since = since };
            }
        }
    }

    private static Expectation? One(YamlFields fields)
    {
        Placed<string>? unit = fields.OptionalText("unit");
        Placed<string>? alarm = fields.OptionalText("alarm");
        Placed<string>? value = fields.OptionalText("value");
        Placed<string>? output = fields.OptionalText("output");
        Placed<string>? requirement = fields.OptionalText("requirement");
        int found = Subjects.Count(fields.Has);
        if (found != 1)
        {
            fields.Diagnostics.Add(ScenarioFileDiagnostics.NeedsExactlyOne(fields.Span, "an expectation", Subjects, found));
            return null;
        }

        return unit is not null ? OfUnit(fields, unit)
            : alarm is not null ? new Expectation.AlarmRaised(alarm.Value, fields.RequiredWord("raised", ["yes", "no"]) == "yes", alarm.Span)
            : value is not null ? OfValue(fields, value)
            : output is not null ? new Expectation.OutputAlways(output.Value, fields.RequiredWord("always", ["on", "off"]) == "on", output.Span)
            : requirement is not null ? new Expectation.RequirementBroken(requirement.Value, fields.RequiredQuantity("broken_at", Dimension.Time, Moments), requirement.Span)
            : null;
    }

    private static Expectation? OfUnit(YamlFields fields, Placed<string> unit)
    {
        UnitState? ends = MomentReading.State(fields, "ends");
        UnitState? reaches = MomentReading.State(fields, "reaches");
        string[] passes = [.. fields.EachText("passes").Select(step => step.Value)];
        Placed<string>? remains = fields.OptionalText("remains_in");
        string[] statements = ["ends", "reaches", "passes", "remains_in"];
        int found = statements.Count(fields.Has);
        if (found != 1)
        {
            fields.Diagnostics.Add(ScenarioFileDiagnostics.NeedsExactlyOne(fields.Span, $"the expectation on `{unit.Value}`", statements, found));
            return null;
        }

        return remains is not null ? OfStep(fields, unit.Value, remains)
            : ends is UnitState last ? new Expectation.FinalState(unit.Value, last, unit.Span)
            : reaches is UnitState state ? new Expectation.StateBefore(unit.Value, state, fields.RequiredQuantity("before", Dimension.Time, Times), unit.Span)
            : new Expectation.StepsVisited(unit.Value, [.. passes], unit.Span);
    }

    private static Expectation.StepLasts? OfStep(YamlFields fields, string unit, Placed<string> step)
    {
        double? least = fields.OptionalQuantity("at_least", Dimension.Time, Times)?.Value;
        double? most = fields.OptionalQuantity("at_most", Dimension.Time, Times)?.Value;
        if (!fields.Has("at_least") && !fields.Has("at_most"))
        {
            fields.Diagnostics.Add(ScenarioFileDiagnostics.BoundsMissing(step.Span, $"{unit} step {step.Value}"));
            return null;
        }

        return new Expectation.StepLasts(unit, step.Value, least, most, step.Span);
    }

    private static Expectation.ValueWithin? OfValue(YamlFields fields, Placed<string> name)
    {
        Measure? minimum = MeasureReading.Read(fields.OptionalText("at_least"), fields.Diagnostics);
        Measure? maximum = MeasureReading.Read(fields.OptionalText("at_most"), fields.Diagnostics);
        bool always = fields.RequiredWord("judged", ["always", "at_end"]) == "always";
        if (!fields.Has("at_least") && !fields.Has("at_most"))
        {
            fields.Diagnostics.Add(ScenarioFileDiagnostics.BoundsMissing(name.Span, name.Value));
            return null;
        }

        return new Expectation.ValueWithin(name.Value, minimum, maximum, always, name.Span);
    }
}
