using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>Reads <c>trials.yaml</c> (spec/trials.md). What its names mean is found when it is bound to the site.</summary>
public static class TrialReader
{
    /// <summary>The version of the file's form that this reader knows.</summary>
    public const int Version = 1;

    private static readonly string[] TakenWords = ["at_end", "lowest", "highest"];

    private static NumberRange Durations => new(0.1, 7 * 86_400);

    private static NumberRange Shares => new(0, 1);

    /// <summary>Null, with every mistake of the file reported, where it cannot be used.</summary>
    public static TrialDescription? Read(SourceText source, DiagnosticBag diagnostics)
    {
        DiagnosticBag found = new();
        TrialDescription? trials = YamlReader.Read(source, found) is YamlMapping mapping ? Read(source, new YamlFields(mapping, found)) : null;
        diagnostics.AddRange(found.InOrder());
        return found.HasErrors ? null : trials;
    }

    private static TrialDescription Read(SourceText source, YamlFields file)
    {
        file.RequiredWholeNumber("trials", Version, Version);
        TrialDescription trials = new(source)
        {
            Scenarios = [.. file.EachText("scenarios")],
            LastsSeconds = file.OptionalQuantity("lasts", Dimension.Time, Durations)?.Value,
            AfterRestSeconds = file.OptionalQuantity("after_rest", Dimension.Time, Durations)?.Value ?? TrialDescription.UsualAfterRestSeconds,
            Recipes = [.. file.EachText("recipes")],
            Tolerances = [.. Tolerances(file)],
            Operator = [.. Operator(file)],
            Outcomes = [.. Outcomes(file)],
            LeftOut = [.. LeftOut(file)],
        };
        file.RejectUnknownKeys();
        return trials;
    }

    private static IEnumerable<ToleranceText> Tolerances(YamlFields file)
    {
        Dictionary<string, Placed<string>> first = new(StringComparer.Ordinal);
        foreach (YamlFields fields in file.EachItem("tolerances"))
        {
            Placed<string> place = fields.RequiredText("quantity");
            Placed<string>? within = fields.OptionalText("within");
            Placed<string>? low = fields.Has("within") ? null : fields.RequiredText("low");
            Placed<string>? high = fields.Has("within") ? null : fields.RequiredText("high");
            fields.RejectUnknownKeys();
            if (!first.TryAdd(place.Value, place))
            {
                fields.Diagnostics.Add(YamlDiagnostics.DuplicateKey(place.Span, place.Value, first[place.Value].Span));
                continue;
            }

            yield return new ToleranceText(place, within, low, high);
        }
    }

    private static IEnumerable<OperatorSpread> Operator(YamlFields file)
    {
        Dictionary<string, Placed<string>> first = new(StringComparer.Ordinal);
        foreach (YamlFields fields in file.EachItem("operator"))
        {
            Placed<string> prompt = fields.RequiredText("prompt");
            Placed<string> answer = fields.RequiredText("answer");
            double soonest = fields.OptionalQuantity("soonest", Dimension.Time, OperatorReading.Delays)?.Value ?? 0;
            double latest = fields.OptionalQuantity("latest", Dimension.Time, OperatorReading.Delays)?.Value ?? soonest;
            double late = Share(fields, "late");
            double lateBy = late > 0 ? fields.RequiredQuantity("late_by", Dimension.Time, OperatorReading.Delays) : 0;
            double never = Share(fields, "never");
            double wrong = Share(fields, "wrong");
            string wrongAnswer = wrong > 0 ? fields.RequiredText("wrong_answer").Value : "";
            fields.RejectUnknownKeys();
            if (latest < soonest)
            {
                fields.Diagnostics.Add(Plant.Description.PlantDiagnostics.OutOfOrder(fields.SpanOf("soonest"), $"prompt `{prompt.Value}`", "`soonest`", "`latest`"));
            }

            if (late + never + wrong > 1)
            {
                fields.Diagnostics.Add(TrialDiagnostics.SharesBeyondAll(prompt.Span, prompt.Value));
            }

            if (!first.TryAdd(prompt.Value, prompt))
            {
                fields.Diagnostics.Add(YamlDiagnostics.DuplicateKey(prompt.Span, prompt.Value, first[prompt.Value].Span));
                continue;
            }

            yield return new OperatorSpread(prompt.Value, answer.Value, soonest, latest, late, lateBy, never, wrong, wrongAnswer, prompt.Span);
        }
    }

    private static double Share(YamlFields fields, string key) => fields.OptionalQuantity(key, Dimension.Fraction, Shares)?.Value ?? 0;

    private static IEnumerable<OutcomeText> Outcomes(YamlFields file)
    {
        foreach (YamlFields fields in file.EachItem("outcomes"))
        {
            Placed<string> value = fields.RequiredText("value");
            string title = fields.OptionalText("title")?.Value ?? value.Value;
            TakenAs taken = fields.OptionalWord("taken", TakenWords) switch
            {
                "lowest" => TakenAs.Lowest,
                "highest" => TakenAs.Highest,
                _ => TakenAs.AtEnd,
            };
            fields.RejectUnknownKeys();
            yield return new OutcomeText(value, title, taken);
        }
    }

    private static IEnumerable<(Placed<string> Fault, string Reason)> LeftOut(YamlFields file)
    {
        foreach (YamlFields fields in file.EachItem("left_out"))
        {
            Placed<string> fault = fields.RequiredText("fault");
            string reason = fields.RequiredText("reason").Value;
            fields.RejectUnknownKeys();
            yield return (fault, reason);
        }
    }
}
