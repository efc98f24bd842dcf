using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Recipes;

/// <summary>
/// Whether recipes and programs name the same things, and each value is a whole step in its parameter's declared
/// range; exact, as the programs' own quantities are. Reports SEQ0280 to SEQ0284 and SEQ0286.
/// </summary>
internal static class RecipeFit
{
    /// <summary>What each recipe, by its name, sets before the start, in the parameters' own units.</summary>
    /// <param name="recipes">All of the site.</param>
    /// <param name="units">The units whose programs are sound.</param>
    /// <param name="complete">False where a unit may be missing among them: then none is told to be unknown.</param>
    /// <param name="diagnostics">Where mistakes go.</param>
    public static ImmutableDictionary<string, ImmutableArray<ParameterSetting>> Settings(
        ImmutableArray<Recipe> recipes, ImmutableArray<UnitProgram> units, bool complete, DiagnosticBag diagnostics)
    {
        Dictionary<string, ImmutableArray<ParameterSetting>> settings = new(StringComparer.Ordinal);
        foreach (Recipe recipe in recipes)
        {
            settings[recipe.Name] = [.. recipe.Values.Select(value => Setting(value, units, complete, diagnostics)).OfType<ParameterSetting>()];
        }

        return settings.ToImmutableDictionary(StringComparer.Ordinal);
    }

    /// <summary>The scenario with the values of the recipe that it names, before its own settings.</summary>
    /// <param name="scenario">Any.</param>
    /// <param name="settings">What the recipes set.</param>
    /// <param name="complete">False where a recipe could not be read: then none is told to be unknown.</param>
    /// <param name="diagnostics">Where mistakes go.</param>
    public static Scenario Applied(
        Scenario scenario, ImmutableDictionary<string, ImmutableArray<ParameterSetting>> settings, bool complete, DiagnosticBag diagnostics)
    {
        if (scenario.Recipe is not { } named)
        {
            return scenario;
        }

        if (settings.TryGetValue(named.Name, out ImmutableArray<ParameterSetting> found))
        {
            return scenario with { Settings = [.. found, .. scenario.Settings] };
        }

        if (complete)
        {
            string[] known = [.. settings.Keys.Order(StringComparer.Ordinal)];
            diagnostics.Add(RecipeDiagnostics.UnknownRecipe(named.Span, named.Name, NearestWord.Find(named.Name, known), known));
        }

        return scenario;
    }

    private static ParameterSetting? Setting(RecipeValue value, ImmutableArray<UnitProgram> units, bool complete, DiagnosticBag diagnostics)
    {
        if (units.FirstOrDefault(unit => unit.Name == value.Unit.Value) is { } unit)
        {
            return Setting(value, unit, diagnostics);
        }

        if (complete)
        {
            string[] known = [.. units.Select(one => one.Name)];
            diagnostics.Add(RecipeDiagnostics.UnknownUnit(value.Unit.Span, value.Unit.Value, NearestWord.Find(value.Unit.Value, known), known));
        }

        return null;
    }

    private static ParameterSetting? Setting(RecipeValue value, UnitProgram unit, DiagnosticBag diagnostics)
    {
        Placed<string> name = value.Parameter;
        if (unit.Parameters.FirstOrDefault(parameter => parameter.Name == name.Value) is not { } found)
        {
            string[] known = [.. unit.Parameters.Select(parameter => parameter.Name)];
            diagnostics.Add(RecipeDiagnostics.UnknownParameter(name.Span, unit.Name, name.Value, NearestWord.Find(name.Value, known), known));
            return null;
        }

        if (UnitTable.Find(value.Value.Unit) is not { } written || written.Dimension != found.Unit.Dimension)
        {
            diagnostics.Add(RecipeDiagnostics.WrongUnit(value.Span, name.Value, value.Value, found.Unit));
            return null;
        }

        Rational steps = Exact(value.Value.Value) * written.Factor / found.Resolution;
        if (steps < found.Minimum || steps > found.Maximum)
        {
            diagnostics.Add(RecipeDiagnostics.OutOfRange(value.Span, name.Value, value.Value, InUnit(found, found.Minimum), InUnit(found, found.Maximum), found.Span));
            return null;
        }

        if (!steps.IsInteger)
        {
            diagnostics.Add(RecipeDiagnostics.OffResolution(value.Span, name.Value, value.Value, InUnit(found, 1)));
            return null;
        }

        return new ParameterSetting($"{unit.Name}.{found.Name}", InUnit(found, steps.ToInt64()), value.Span);
    }

    private static Measure InUnit(Parameter parameter, long steps) =>
        new(steps * SimulationMetadata.InUnit(parameter.Resolution, parameter.Unit), parameter.Unit.Symbol);

    private static Rational Exact(decimal value)
    {
        string[] parts = value.ToString(CultureInfo.InvariantCulture).Split('.');
        string digits = string.Concat(parts);
        return new Rational(BigInteger.Parse(digits, CultureInfo.InvariantCulture), BigInteger.Pow(10, parts.Length > 1 ? parts[1].Length : 0));
    }
}
