using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Plant;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Descriptions;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Recipes;
using Sequencer.Sites.Scenarios;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Trials;
using Sequencer.Text;

namespace Sequencer.Sites;

/// <summary>From a site's folder to a site that checks, or to every mistake in its files.</summary>
internal static class SiteLoader
{
    public const string DescriptionName = "site.yaml";
    private const string TrialsName = "trials.yaml";
    private const string RecipeFolder = "recipes";

    /// <summary>The site, or null if there is an error; all diagnostics of all files go to the bag.</summary>
    public static LoadedSite? Load(SiteFolder folder, DiagnosticBag diagnostics)
    {
        SourceSpan nowhere = new SourceText($"{folder.Shown}/{DescriptionName}", "").Whole;
        SourceText? text = folder.Read(DescriptionName, nowhere, diagnostics);
        SiteDescription? description = text is null ? null : SiteDescriptionReader.Read(text, diagnostics);
        if (description is null)
        {
            return null;
        }

        ImmutableArray<SourceText> texts = Texts(folder, description, diagnostics);
        ImmutableArray<UnitProgram> units = Programs(folder, description, texts, diagnostics);
        SourceText? plantText = folder.Read(description.Plant.Name, description.Plant.Span, diagnostics);
        PlantModel? plant = plantText is null ? null : PlantReader.Read(plantText, diagnostics);
        ImmutableArray<Recipe> recipes = ReadRecipes(folder, diagnostics);
        ImmutableDictionary<string, ImmutableArray<ParameterSetting>> settings =
            RecipeFit.Settings(recipes, units, units.Length == description.Programs.Length, diagnostics);
        bool allRead = recipes.Length == folder.Files(RecipeFolder, ".yaml").Count;
        ImmutableArray<Scenario> scenarios =
        [
            .. ReadScenarios(folder, diagnostics).Select(scenario => RecipeFit.Applied(scenario, settings, allRead, diagnostics))
                .Select(scenario => plant is null || plantText is null ? scenario : OnItsPlant(scenario, plantText, diagnostics)),
        ];
        TrialDescription? trials = ReadTrials(folder, diagnostics);
        Cross(description, units, diagnostics);
        CheckConsent(description, units, plant, diagnostics);
        if (diagnostics.HasErrors || plant is null || plantText is null)
        {
            return null;
        }

        SiteProgram programs = new(description.Name, description.ScanMilliseconds, units);
        TransitionSystem system = SiteLowering.Lower(programs);
        string hash = system.Meaning;
        SiteMetadata metadata = Metadata(description, programs, hash);
        LoadedSite site = new(description, programs, system, hash, plant, plantText, metadata, recipes, scenarios, texts, folder.Read);
        ScenarioFit.Check(site, diagnostics);
        if (trials is not null && !diagnostics.HasErrors)
        {
            site = site with { Trials = TrialFit.Bind(site, trials, diagnostics) };
        }

        return diagnostics.HasErrors ? null : site;
    }

    /// <summary>The same site with other texts of its programs, which check.</summary>
    public static LoadedSite WithPrograms(LoadedSite site, ImmutableArray<SourceText> texts, ImmutableArray<UnitProgram> units)
    {
        SiteProgram programs = new(site.Description.Name, site.Description.ScanMilliseconds, units);
        TransitionSystem system = SiteLowering.Lower(programs);
        string hash = system.Meaning;
        return new LoadedSite(
            site.Description, programs, system, hash, site.Plant, site.PlantText, Metadata(site.Description, programs, hash), site.Recipes, site.Scenarios, texts, site.Libraries);
    }

    private static SiteMetadata Metadata(SiteDescription description, SiteProgram programs, string hash) =>
        SimulationMetadata.Of(programs, hash, [.. description.Consent.Select(Limit)]);

    private static ImmutableArray<SourceText> Texts(SiteFolder folder, SiteDescription description, DiagnosticBag diagnostics) =>
        [.. description.Programs.Select(file => folder.Read(file.Name, file.Span, diagnostics)).OfType<SourceText>()];

    private static ImmutableArray<UnitProgram> Programs(SiteFolder folder, SiteDescription description, ImmutableArray<SourceText> texts, DiagnosticBag diagnostics)
    {
        SiteCheckResult result = SiteChecker.Check(texts, description.ScanMilliseconds, texts.Length == description.Programs.Length, libraries: folder.Read);
        diagnostics.AddRange(result.Diagnostics);
        foreach ((UnitProgram unit, int place) in result.Units.Select((unit, place) => (unit, place)))
        {
            if (result.Units.Take(place).Any(other => string.Equals(other.Name, unit.Name, StringComparison.OrdinalIgnoreCase)))
            {
                diagnostics.Add(SiteDiagnostics.TwoUnitsOfOneName(unit.Span, unit.Name));
            }
        }

        return result.Units;
    }

    private static TrialDescription? ReadTrials(SiteFolder folder, DiagnosticBag diagnostics)
    {
        SourceSpan nowhere = new SourceText($"{folder.Shown}/{TrialsName}", "").Whole;
        return folder.Has(TrialsName) && folder.Read(TrialsName, nowhere, diagnostics) is { } text ? TrialReader.Read(text, diagnostics) : null;
    }

    /// <summary>The scenario with its own plant, where it changes something in it.</summary>
    public static Scenario OnItsPlant(Scenario scenario, SourceText plant, DiagnosticBag diagnostics) => scenario.PlantChanges.IsEmpty
        ? scenario
        : scenario with { Plant = PlantReader.Read(plant, scenario.PlantChanges, diagnostics) };

    private static ImmutableArray<Recipe> ReadRecipes(SiteFolder folder, DiagnosticBag diagnostics)
    {
        ImmutableArray<Recipe>.Builder recipes = ImmutableArray.CreateBuilder<Recipe>();
        foreach (string file in folder.Files(RecipeFolder, ".yaml"))
        {
            SourceSpan nowhere = new SourceText($"{folder.Shown}/{file}", "").Whole;
            if (folder.Read(file, nowhere, diagnostics) is { } text && RecipeReader.Read(text, diagnostics) is { } recipe)
            {
                if (recipes.FirstOrDefault(other => FileNames.Of(other.Name) == FileNames.Of(recipe.Name)) is { } first)
                {
                    diagnostics.Add(RecipeDiagnostics.TwoRecipesOfOneName(recipe.Span, recipe.Name, first.Span));
                }

                recipes.Add(recipe);
            }
        }

        return recipes.ToImmutable();
    }

    private static ImmutableArray<Scenario> ReadScenarios(SiteFolder folder, DiagnosticBag diagnostics)
    {
        ImmutableArray<Scenario>.Builder scenarios = ImmutableArray.CreateBuilder<Scenario>();
        foreach (string file in folder.Files("scenarios", ".yaml"))
        {
            SourceSpan nowhere = new SourceText($"{folder.Shown}/{file}", "").Whole;
            if (folder.Read(file, nowhere, diagnostics) is { } text && ScenarioReader.Read(text, diagnostics) is { } scenario)
            {
                if (scenarios.Any(other => FileNames.Of(other.Name) == FileNames.Of(scenario.Name)))
                {
                    diagnostics.Add(SiteDiagnostics.TwoScenariosOfOneName(scenario.Span, scenario.Name));
                }

                scenarios.Add(scenario);
            }
        }

        return scenarios.ToImmutable();
    }

    /// <summary>What the files say of each other: hazards of requirements, requirements of hazards.</summary>
    private static void Cross(SiteDescription description, ImmutableArray<UnitProgram> units, DiagnosticBag diagnostics)
    {
        if (units.Length < description.Programs.Length)
        {
            return;
        }

        Dictionary<string, SourceSpan> requirements = new(StringComparer.Ordinal);
        SiteProgram site = new(description.Name, description.ScanMilliseconds, units);
        foreach (UnitProgram unit in units)
        {
            foreach (RequirementClause requirement in unit.Requirements)
            {
                requirements.TryAdd(site.NameOf(unit, requirement.Name), requirement.Span);
            }
        }

        foreach (Hazard hazard in description.Hazards)
        {
            foreach (string name in hazard.MetBy.Where(name => !requirements.ContainsKey(name)))
            {
                diagnostics.Add(SiteDiagnostics.UnknownRequirement(hazard.Span, hazard.Id, name));
            }
        }

        HashSet<string> met = [.. description.Hazards.SelectMany(hazard => hazard.MetBy)];
        foreach ((string name, SourceSpan span) in requirements.Where(requirement => !met.Contains(requirement.Key)))
        {
            diagnostics.Add(SiteDiagnostics.RequirementWithoutHazard(span, name));
        }
    }

    /// <summary>
    /// Consent limits must name what is kept of the whole run: neither a reading, which may be wrong, nor what happens to be so at the end.
    /// </summary>
    private static void CheckConsent(
        SiteDescription description, ImmutableArray<UnitProgram> units, PlantModel? plant, DiagnosticBag diagnostics)
    {
        if (plant is null || units.IsEmpty)
        {
            return;
        }

        HashSet<string> known = [.. PlantRun.Start(plant, 1).Totals.Select(total => total.Name)];
        foreach (ConsentLimit limit in description.Consent.Where(limit => !known.Contains(limit.Quantity)))
        {
            diagnostics.Add(SiteDiagnostics.ConsentOfUnknownQuantity(limit.Span, limit.Quantity, NearestWord.Find(limit.Quantity, known)));
        }
    }

    private static DischargeLimit Limit(ConsentLimit limit) => new(limit.Quantity, limit.Title, limit.Low, limit.High);
}
