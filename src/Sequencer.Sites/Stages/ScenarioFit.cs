using Sequencer.Control.Execution;
using Sequencer.Plant;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Stages;

/// <summary>
/// Whether programs, plant and scenarios name the same things. Found when a site is loaded, so that a check
/// lists these mistakes too and no proof is waited for before them.
/// </summary>
internal static class ScenarioFit
{
    public static void Check(LoadedSite site, DiagnosticBag diagnostics)
    {
        if (Join(site, Fresh(site), site.Plant, 1, diagnostics) is not { } loop)
        {
            return;
        }

        foreach (Scenario scenario in site.Scenarios)
        {
            // What the programs and the plant tell each other is told once, but for what a changed plant breaks.
            DiagnosticBag own = new();
            ClosedLoop? joined = scenario.Plant is null ? loop : Join(site, Fresh(site), scenario, own);
            diagnostics.AddRange(own.InOrder().Where(diagnostic => diagnostic.Severity == Severity.Error));
            _ = joined is null ? null : ScenarioRun.Bind(joined, scenario, diagnostics);
        }
    }

    /// <summary>The site's controller joined to a fresh plant, as the scenario has it; null, with diagnostics, where they do not fit.</summary>
    public static ClosedLoop? Join(LoadedSite site, Stepper stepper, Scenario scenario, DiagnosticBag diagnostics) =>
        Join(site, stepper, scenario.Plant ?? site.Plant, (ulong)scenario.Seed, diagnostics);

    private static ClosedLoop? Join(LoadedSite site, Stepper stepper, PlantModel plant, ulong seed, DiagnosticBag diagnostics) =>
        ClosedLoop.Join(stepper, PlantRun.Start(plant, seed), site.Metadata, site.Description.Plant.Span, diagnostics);

    private static Interpreter Fresh(LoadedSite site) => new(site.System, ClosedLoop.Observed(site.System, site.Metadata));
}
