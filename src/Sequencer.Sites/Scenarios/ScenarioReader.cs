using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Scenarios;

/// <summary>
/// Reads a scenario file (spec/scenarios.md). What the names in it mean is found when the scenario is
/// bound to a site's closed loop.
/// </summary>
public static class ScenarioReader
{
    /// <summary>The version of the file's form that this reader knows.</summary>
    public const int Version = 1;

    private const int MostSeed = 1_000_000_000;

    /// <summary>The longest run: a week of scans is plenty for a batch plant and bounds the time of a slip.</summary>
    private static NumberRange Durations => new(0.1, 7 * 86_400);

    private static NumberRange Moments => new(0, 7 * 86_400);

    /// <summary>Null, with every mistake of the file reported, where it cannot be used.</summary>
    public static Scenario? Read(SourceText source, DiagnosticBag diagnostics)
    {
        DiagnosticBag found = new();
        Scenario? scenario = YamlReader.Read(source, found) is YamlMapping mapping ? Read(new YamlFields(mapping, found)) : null;
        diagnostics.AddRange(found.InOrder());
        return found.HasErrors ? null : scenario;
    }

    private static Scenario Read(YamlFields file)
    {
        file.RequiredWholeNumber("scenario", Version, Version);
        Placed<string> name = file.RequiredText("name");
        Scenario scenario = new(
            name.Value,
            file.OptionalText("purpose")?.Value ?? "",
            file.RequiredQuantity("lasts", Dimension.Time, Durations),
            name.Span)
        {
            Seed = (int)(file.OptionalWholeNumber("seed", 0, MostSeed) ?? 1),
            Until = file.OptionalFields("until") is YamlFields until ? MomentReading.Event(until, "`until`") : null,
            Recipe = file.OptionalText("recipe") is { } recipe ? new NamedRecipe(recipe.Value, recipe.Span) : null,
            Settings = [.. Settings(file)],
            Inputs = [.. Inputs(file)],
            PlantChanges = [.. PlantChangeReading.Each(file)],
            Operator = [.. OperatorReading.Each(file)],
            Actions = [.. ActionReading.Each(file)],
            Expectations = [.. ExpectationReading.Each(file)],
        };
        file.RejectUnknownKeys();
        if (scenario.Expectations.IsEmpty && !file.Diagnostics.HasErrors)
        {
            file.Diagnostics.Add(ScenarioFileDiagnostics.NothingExpected(name.Span, name.Value));
        }

        return scenario;
    }

    private static IEnumerable<InputValue> Inputs(YamlFields file)
    {
        const string At = "at";
        foreach (YamlFields moment in file.EachItem("inputs"))
        {
            double seconds = moment.RequiredQuantity(At, Dimension.Time, Moments);
            foreach (Placed<string> input in moment.Keys().Where(key => key.Value != At).ToImmutableArray())
            {
                Placed<string> written = moment.RequiredText(input.Value);
                if (MeasureReading.Read(written, file.Diagnostics) is Measure value)
                {
                    yield return new InputValue(seconds, input.Value, value, input.Span);
                }
            }
        }
    }

    private static IEnumerable<ParameterSetting> Settings(YamlFields file)
    {
        if (file.OptionalFields("settings") is not YamlFields settings)
        {
            yield break;
        }

        foreach (Placed<string> parameter in settings.Keys().ToImmutableArray())
        {
            Placed<string> written = settings.RequiredText(parameter.Value);
            if (MeasureReading.Read(written, file.Diagnostics) is Measure value)
            {
                yield return new ParameterSetting(parameter.Value, value, written.Span);
            }
        }
    }
}
