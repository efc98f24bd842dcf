using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Language.Programs;
using Sequencer.Plant;
using Sequencer.Plant.Description;
using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Recipes;
using Sequencer.Sites.Scenarios;
using Sequencer.Sites.Stages;
using Sequencer.Text;
using Quantity = Sequencer.Language.Programs.Quantity;

namespace Sequencer.Sites.Trials;

/// <summary>
/// Ties what <c>trials.yaml</c> names to the site. Every tolerance is tried at both its ends, so that a value that the plant
/// cannot have is found before the first run.
/// </summary>
internal static class TrialFit
{
    /// <summary>Null, with diagnostics, where something does not fit.</summary>
    public static SiteTrials? Bind(LoadedSite site, TrialDescription description, DiagnosticBag diagnostics)
    {
        DiagnosticBag found = new();
        ImmutableArray<Scenario> scenarios = Scenarios(site, description, found);
        ImmutableArray<Tolerance> tolerances = ToleranceFit.Bind(site, description.Tolerances, found);
        ImmutableArray<(string Name, ImmutableArray<ParameterSetting> Settings)> recipes = Recipes(site, description, found);
        if (!found.HasErrors && !scenarios.IsEmpty)
        {
            foreach (bool high in (ReadOnlySpan<bool>)[false, true])
            {
                TryEnds(site, description, scenarios[0], tolerances, high, found);
            }
        }

        diagnostics.AddRange(found.InOrder().DistinctBy(diagnostic => (diagnostic.Code, diagnostic.Span, diagnostic.Message)));
        if (found.HasErrors || scenarios.IsEmpty)
        {
            return null;
        }

        PlantRun plant = PlantRun.Start(site.Plant, 1);
        HashSet<string> leftOut = [.. description.LeftOut.Select(fault => fault.Fault.Value)];
        return new SiteTrials(description, scenarios, recipes, tolerances, [.. plant.Faults.Select(fault => fault.Name).Where(fault => !leftOut.Contains(fault))], Measures(site, description, plant));
    }

    /// <summary>What a run is played on: the scenario with the operator of the set in place of its own answers.</summary>
    public static Scenario WithOperator(Scenario scenario, IReadOnlyCollection<OperatorRule> rules)
    {
        HashSet<string> prompts = [.. rules.Select(rule => rule.Prompt)];
        return scenario with
        {
            Actions = [.. scenario.Actions.Where(action => action.Deed is not Deed.Answer answer || !prompts.Contains(answer.Prompt))],
            Operator = [.. scenario.Operator.Where(rule => !prompts.Contains(rule.Prompt)), .. rules],
        };
    }

    private static ImmutableArray<Scenario> Scenarios(LoadedSite site, TrialDescription description, DiagnosticBag diagnostics)
    {
        ImmutableArray<Scenario> known = SiteCommands.InOrder(site);
        if (description.Scenarios.IsEmpty)
        {
            return [.. known.Where(scenario => scenario.Inputs.IsEmpty).Take(1)];
        }

        ImmutableArray<Scenario>.Builder chosen = ImmutableArray.CreateBuilder<Scenario>();
        foreach (Placed<string> name in description.Scenarios)
        {
            if (known.FirstOrDefault(scenario => scenario.Name == name.Value) is not { } scenario)
            {
                string[] names = [.. known.Select(one => one.Name)];
                diagnostics.Add(TrialDiagnostics.UnknownScenario(name.Span, name.Value, NearestWord.Find(name.Value, names), names));
            }
            else if (!scenario.Inputs.IsEmpty)
            {
                diagnostics.Add(TrialDiagnostics.WithoutPlant(name.Span, name.Value));
            }
            else
            {
                chosen.Add(scenario with { DurationSeconds = description.LastsSeconds ?? scenario.DurationSeconds });
            }
        }

        return chosen.ToImmutable();
    }

    private static ImmutableArray<(string Name, ImmutableArray<ParameterSetting> Settings)> Recipes(LoadedSite site, TrialDescription description, DiagnosticBag diagnostics)
    {
        ImmutableDictionary<string, ImmutableArray<ParameterSetting>> settings = RecipeFit.Settings(site.Recipes, site.Programs.Units, true, new DiagnosticBag());
        ImmutableArray<(string Name, ImmutableArray<ParameterSetting> Settings)>.Builder chosen = ImmutableArray.CreateBuilder<(string, ImmutableArray<ParameterSetting>)>();
        foreach (Placed<string> name in description.Recipes)
        {
            if (name.Value == TrialDescription.ScenariosOwn)
            {
                chosen.Add((name.Value, []));
            }
            else if (settings.TryGetValue(name.Value, out ImmutableArray<ParameterSetting> found))
            {
                chosen.Add((name.Value, found));
            }
            else
            {
                string[] known = [.. settings.Keys.Order(StringComparer.Ordinal)];
                diagnostics.Add(RecipeDiagnostics.UnknownRecipe(name.Span, name.Value, NearestWord.Find(name.Value, known), known));
            }
        }

        return chosen.Count == 0 ? [(TrialDescription.ScenariosOwn, [])] : chosen.ToImmutable();
    }

    /// <summary>Binds a run in which everything that is named comes to pass; it is not played.</summary>
    private static void TryEnds(
        LoadedSite site, TrialDescription description, Scenario scenario, ImmutableArray<Tolerance> tolerances, bool high, DiagnosticBag diagnostics)
    {
        PlantChange[] ends = [.. tolerances.Select(tolerance => new PlantChange(
            tolerance.Place, tolerance.Written with { Value = ToleranceFit.Written(high ? tolerance.High : tolerance.Low, tolerance.Unit).Text }))];
        if (PlantReader.Read(site.PlantText, [.. scenario.PlantChanges, .. ends], diagnostics) is not { } plant)
        {
            return;
        }

        Scenario tried = WithOperator(scenario, [.. description.Operator.Select(spread => new OperatorRule(
            spread.Prompt, spread.Answer, 0, spread.Wrong > 0 ? OperatorManner.Wrong : OperatorManner.AsMeant, 0, spread.WrongAnswer, spread.Span))]);
        tried = tried with
        {
            Plant = plant,
            Actions = [.. tried.Actions, .. description.LeftOut.Select(left => new ScriptedAction(new Moment(new Event.Start(), 0, left.Fault.Span), new Deed.Inject(left.Fault.Value), left.Fault.Span))],
            Expectations = [.. tried.Expectations, .. description.Outcomes.Select(outcome => new Expectation.ValueWithin(outcome.Value.Value, null, null, false, outcome.Value.Span))],
        };
        DiagnosticBag joining = new();
        ClosedLoop? loop = ScenarioFit.Join(site, new Interpreter(site.System, ClosedLoop.Observed(site.System, site.Metadata)), tried, joining);
        diagnostics.AddRange(joining.InOrder().Where(diagnostic => diagnostic.Severity == Severity.Error));
        _ = loop is null ? null : ScenarioRun.Bind(loop, tried, diagnostics);
    }

    private static TrialMeasures Measures(LoadedSite site, TrialDescription description, PlantRun plant)
    {
        Dictionary<string, string> units = plant.Quantities.Concat(plant.Totals).DistinctBy(quantity => quantity.Name).ToDictionary(quantity => quantity.Name, quantity => quantity.Unit, StringComparer.Ordinal);
        string UnitOf(string name) => site.Metadata.Signal(name)?.Unit ?? units.GetValueOrDefault(name, "");
        return new TrialMeasures(
            [
                .. site.Plant.Reagents.Select(reagent => new TrialValue($"{reagent.Name}.used", $"{reagent.Name} used", "L", TakenAs.AtEnd)),
                .. site.Metadata.DischargeLimits.Select(limit => new TrialValue(limit.Quantity, limit.Title, UnitOf(limit.Quantity), TakenAs.AtEnd)),
                .. description.Outcomes.Select(outcome => new TrialValue(outcome.Value.Value, outcome.Title, UnitOf(outcome.Value.Value), outcome.Taken)),
            ],
            TotalsOf(plant, ".overflowed"),
            TotalsOf(plant, ".leaked"),
            [.. Doses(site)],
            description.AfterRestSeconds);
    }

    private static ImmutableArray<string> TotalsOf(PlantRun plant, string ending) =>
        [.. plant.Totals.Select(total => total.Name).Where(name => name.EndsWith(ending, StringComparison.Ordinal))];

    /// <summary>What programs may give in a batch, and the lines of the plant behind the output that gives it.</summary>
    private static IEnumerable<DoseLimit> Doses(LoadedSite site)
    {
        foreach (UnitProgram unit in site.Programs.Units)
        {
            foreach (IGrouping<string, (string Output, Quantity Maximum)> output in unit.Steps.SelectMany(step => step.Actions).SelectMany(Limits).GroupBy(limit => limit.Output))
            {
                string[] lines = [.. site.Plant.Lines.Where(line => line.Through.Contains(output.Key)).Select(line => $"{line.Name}.passed")];
                Quantity[] maxima = [.. output.Select(limit => limit.Maximum)];
                if (lines.Length == 0)
                {
                    continue;
                }

                if (maxima.Length == 1 && maxima[0] is ParameterQuantity parameter)
                {
                    yield return new DoseLimit(unit.Name, output.Key, 0, $"{unit.Name}.{parameter.Parameter.Name}", [.. lines]);
                }
                else if (maxima.All(maximum => maximum is LiteralQuantity))
                {
                    decimal most = maxima.OfType<LiteralQuantity>().Max(literal => SimulationMetadata.InUnit(literal.Value, Litre));
                    yield return new DoseLimit(unit.Name, output.Key, (double)most, null, [.. lines]);
                }
            }
        }
    }

    private static IEnumerable<(string Output, Quantity Maximum)> Limits(StepAction action) => action switch
    {
        DoseAction dose => [(dose.Output.Tag, dose.Maximum)],
        AmountDoseAction { Maximum: { } maximum } dose => [(dose.Output.Tag, maximum)],
        AmountDoseAction { Per: null } dose => [(dose.Output.Tag, dose.Amount)],
        _ => [],
    };

    private static Language.Units.Unit Litre => Language.Units.UnitTable.Find("L") ?? throw new InvalidOperationException("there is no litre");
}
