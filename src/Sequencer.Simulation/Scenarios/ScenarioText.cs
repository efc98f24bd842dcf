using System.Globalization;
using System.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>A scenario as the file that it is read from: read again, it means the same to the last bit.</summary>
public static class ScenarioText
{
    public static string Write(Scenario scenario)
    {
        StringBuilder text = new();
        text.Append("scenario: 1\n");
        text.Append($"name: {Quoted(scenario.Name)}\n");
        if (scenario.Description.Length > 0)
        {
            text.Append($"purpose: {Quoted(scenario.Description)}\n");
        }

        text.Append($"lasts: {Time(scenario.DurationSeconds)}\n");
        if (scenario.Until is Moment until)
        {
            text.Append($"until: {{{Of(until)}}}\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"seed: {scenario.Seed}\n");
        Group(text, "settings", scenario.Settings.GroupBy(setting => setting.Parameter, (parameter, given) => $"{parameter}: {given.Last().Value}"));
        Group(text, "plant", scenario.PlantChanges.Select(change => $"{change.Place.Value}: {Quoted(change.Value.Value)}"));
        List(text, "operator", scenario.Operator.Select(Of));
        List(text, "inputs", scenario.Inputs.Select(given => $"at: {Time(given.Seconds)}, {given.Input}: {given.Value}"));
        List(text, "actions", scenario.Actions.Select(action => $"{Of(action)}, {Of(action.Deed)}"));
        List(text, "expect", scenario.Expectations.Select(Of));
        return text.ToString();
    }

    private static void Group(StringBuilder text, string key, IEnumerable<string> lines) => Each(text, key, "  ", "", lines);

    private static void List(StringBuilder text, string key, IEnumerable<string> items) => Each(text, key, "  - {", "}", items);

    private static void Each(StringBuilder text, string key, string before, string after, IEnumerable<string> items)
    {
        bool any = false;
        foreach (string item in items)
        {
            text.Append(any ? "" : $"{key}:\n").Append(before).Append(item).Append(after).Append('\n');
            any = true;
        }
    }

    private static string Of(OperatorRule rule) => $"prompt: {rule.Prompt}, answer: {Quoted(rule.Answer)}, after: {Time(rule.DelaySeconds)}" + rule.Manner switch
    {
        OperatorManner.Late => $", manner: late, late_by: {Time(rule.LateSeconds)}",
        OperatorManner.Never => ", manner: never",
        OperatorManner.Wrong => $", manner: wrong, wrong_answer: {Quoted(rule.WrongAnswer)}",
        _ => "",
    };

    private static string Of(ScriptedAction action) => action.Moment.Event is Event.Start
        ? $"at: {Time(action.Moment.DelaySeconds)}"
        : $"when: {{{Of(action.Moment)}}}";

    private static string Of(Moment moment)
    {
        string occurrence = moment.Occurrence > 1 ? string.Create(CultureInfo.InvariantCulture, $", occurrence: {moment.Occurrence}") : "";
        string after = moment.DelaySeconds > 0 ? $", after: {Time(moment.DelaySeconds)}" : "";
        return Of(moment.Event) + occurrence + after;
    }

    private static string Of(Event happening) => happening switch
    {
        Event.StepActive active => $"unit: {active.Unit}, step: {Quoted(active.Step)}",
        Event.StateReached reached => $"unit: {reached.Unit}, state: {reached.State}",
        Event.PromptAsked asked => $"asked: {asked.Prompt}",
        Event.ValueCrosses crosses => $"value: {crosses.Name}, {(crosses.Above ? "above" : "below")}: {crosses.Bound}",
        Event.OutputTurns turns => $"output: {turns.Output}, turns: {Word(turns.On)}",
        Event.AlarmRaised raised => $"alarm: {raised.Alarm}",
        _ => throw new System.Diagnostics.UnreachableException($"no text for {happening}"),
    };

    private static string Of(Deed deed) => deed switch
    {
        Deed.Press press => $"press: {press.Input}",
        Deed.Set set => $"set: {set.Input}, to: {set.Value}",
        Deed.Answer answer => $"answer: {answer.Prompt}, with: {Quoted(answer.Words)}",
        Deed.Manual manual => $"manual: {manual.Output}, to: {manual.Mode.ToString().ToLowerInvariant()}",
        Deed.Inject inject => $"inject: {inject.Fault}",
        Deed.Clear clear => $"clear: {clear.Fault}",
        Deed.LosePower lose => $"lose_power: {Time(lose.Seconds)}",
        _ => throw new System.Diagnostics.UnreachableException($"no text for {deed}"),
    };

    private static string Of(Expectation expectation) => Plain(expectation) + (expectation.Since is Moment since ? $", since: {{{Of(since)}}}" : "");

    private static string Plain(Expectation expectation) => expectation switch
    {
        Expectation.FinalState final => $"unit: {final.Unit}, ends: {final.State}",
        Expectation.StateBefore before => $"unit: {before.Unit}, reaches: {before.State}, before: {Time(before.Seconds)}",
        Expectation.AlarmRaised alarm => $"alarm: {alarm.Alarm}, raised: {(alarm.Raised ? "yes" : "no")}",
        Expectation.ValueWithin value => $"value: {value.Name}{Bound("at_least", value.Minimum)}{Bound("at_most", value.Maximum)}, judged: {(value.Always ? "always" : "at_end")}",
        Expectation.OutputAlways output => $"output: {output.Output}, always: {Word(output.On)}",
        Expectation.StepsVisited steps => $"unit: {steps.Unit}, passes: [{string.Join(", ", steps.Steps.Select(Quoted))}]",
        Expectation.RequirementBroken broken => $"requirement: {broken.Requirement}, broken_at: {Time(broken.Seconds)}",
        Expectation.StepLasts lasts => $"unit: {lasts.Unit}, remains_in: {Quoted(lasts.Step)}{Bound("at_least", lasts.AtLeast)}{Bound("at_most", lasts.AtMost)}",
        _ => throw new System.Diagnostics.UnreachableException($"no text for {expectation}"),
    };

    private static string Bound(string key, Measure? bound) => bound is Measure measure ? $", {key}: {measure}" : "";

    private static string Bound(string key, double? seconds) => seconds is double bound ? $", {key}: {Time(bound)}" : "";

    private static string Word(bool on) => on ? "on" : "off";

    private static string Time(double seconds) => string.Create(CultureInfo.InvariantCulture, $"{seconds:R} s");

    private static string Quoted(string words) => $"\"{words.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal)}\"";
}
