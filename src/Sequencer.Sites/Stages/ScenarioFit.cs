using Sequencer.Control.Execution;
using Sequencer.Plant;
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
        Interpreter interpreter = new(site.System, ClosedLoop.Observed(site.System, site.Metadata));
        if (Join(site, interpreter, seed: 1, diagnostics) is not { } loop)
        {
            return;
        }

        foreach (Scenario scenario in site.Scenarios)
        {
            _ = ScenarioRun.Bind(loop, scenario, diagnostics);
        }
    }

    /// <summary>The site's controller joined to a fresh plant; null, with diagnostics, where they do not fit.</summary>
    public static ClosedLoop? Join(LoadedSite site, Stepper stepper, ulong seed, DiagnosticBag diagnostics) =>
        ClosedLoop.Join(stepper, PlantRun.Start(site.Plant, seed), site.Metadata, site.Description.Plant.Span, diagnostics);
}
