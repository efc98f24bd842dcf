using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Recipes;

/// <summary>Reads a recipe file (spec/recipes.md). Whether its names and values fit the programs is <see cref="RecipeFit"/>'s to say.</summary>
public static class RecipeReader
{
    /// <summary>The version of the file's form that this reader knows.</summary>
    public const int Version = 1;

    /// <summary>Null, with every mistake of the file reported, where it cannot be used.</summary>
    public static Recipe? Read(SourceText source, DiagnosticBag diagnostics)
    {
        DiagnosticBag found = new();
        Recipe? recipe = YamlReader.Read(source, found) is YamlMapping mapping ? Read(new YamlFields(mapping, found)) : null;
        diagnostics.AddRange(found.InOrder());
        return found.HasErrors ? null : recipe;
    }

    private static Recipe Read(YamlFields file)
    {
        file.RequiredWholeNumber("recipe", Version, Version);
        Placed<string> name = file.RequiredText("name");
        string purpose = file.OptionalText("purpose")?.Value ?? "";
        YamlFields values = file.RequiredFields("values");
        ImmutableArray<RecipeValue> read = [.. values.Keys().ToImmutableArray().SelectMany(unit => Values(values, unit))];
        file.RejectUnknownKeys();
        return new Recipe(name.Value, purpose, read, name.Span);
    }

    private static IEnumerable<RecipeValue> Values(YamlFields values, Placed<string> unit)
    {
        if (values.OptionalFields(unit.Value) is not YamlFields parameters)
        {
            yield break;
        }

        foreach (Placed<string> parameter in parameters.Keys().ToImmutableArray())
        {
            Placed<string> written = parameters.RequiredText(parameter.Value);
            if (MeasureReading.Read(written, values.Diagnostics) is Measure value)
            {
                yield return new RecipeValue(unit, parameter, value, written.Span);
            }
        }
    }
}
