using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Sites.Scenarios;

/// <summary>Reads what is done or happens: one deed an entry of <c>actions</c>.</summary>
internal static class ActionReading
{
    private static readonly string[] Deeds = ["press", "set", "answer", "manual", "inject", "clear", "lose_power"];

    private static NumberRange Outages => new(0.1, 7 * 86_400);

    public static IEnumerable<ScriptedAction> Each(YamlFields file)
    {
        foreach (YamlFields action in file.EachItem("actions"))
        {
            Moment? moment = MomentReading.OfAction(action);
            Deed? deed = OneDeed(action);
            action.RejectUnknownKeys();
            if (moment is not null && deed is not null)
            {
                yield return new ScriptedAction(moment, deed, action.SpanOf(Deeds.First(action.Has)));
            }
        }
    }

    private static Deed? OneDeed(YamlFields action)
    {
        Placed<string>? press = action.OptionalText("press");
        Placed<string>? set = action.OptionalText("set");
        Placed<string>? answer = action.OptionalText("answer");
        Placed<string>? manual = action.OptionalText("manual");
        Placed<string>? inject = action.OptionalText("inject");
        Placed<string>? clear = action.OptionalText("clear");
        Quantity? outage = action.OptionalQuantity("lose_power", Dimension.Time, Outages);
        int found = Deeds.Count(action.Has);
        if (found != 1)
        {
            action.Diagnostics.Add(ScenarioFileDiagnostics.NeedsExactlyOne(action.Span, "an action", Deeds, found));
            return null;
        }

        return press is not null ? new Deed.Press(press.Value)
            : set is not null ? Setting(action, set.Value)
            : answer is not null ? Answer(action, answer.Value)
            : manual is not null ? new Deed.Manual(manual.Value, Mode(action))
            : inject is not null ? new Deed.Inject(inject.Value)
            : clear is not null ? new Deed.Clear(clear.Value)
            : outage is not null ? new Deed.LosePower(outage.Value)
            : null;
    }

    private static Deed.Set? Setting(YamlFields action, string input) =>
        MeasureReading.Read(action.RequiredText("to"), action.Diagnostics) is Measure value ? new Deed.Set(input, value) : null;

    private static Deed.Answer? Answer(YamlFields action, string prompt) =>
        action.RequiredText("with") is { } words ? new Deed.Answer(prompt, words.Value) : null;

    private static ManualMode Mode(YamlFields action) => action.RequiredWord("to", ["on", "off", "automatic"]) switch
    {
        "on" => ManualMode.On,
        "off" => ManualMode.Off,
        _ => ManualMode.Automatic,
    };
}
