using Sequencer.Control.Execution.Specialising;
using Sequencer.Control.TransitionSystems;
using Sequencer.Plant;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Scenarios;

/// <summary>Plays scenarios of one site: its programs are compiled once, every scenario has a fresh plant.</summary>
public sealed class ScenarioPlayer
{
    private readonly TransitionSystem _system;
    private readonly SiteMetadata _metadata;
    private readonly PlantModel _plant;

    public ScenarioPlayer(TransitionSystem system, SiteMetadata metadata, PlantModel plant)
    {
        _system = system;
        _metadata = metadata;
        _plant = plant;
    }

    /// <summary>
    /// Null, with diagnostics, where the programs, the plant and the scenario do not fit together;
    /// <paramref name="progress"/> gets the simulated seconds now and then.
    /// </summary>
    /// <exception cref="OperationCanceledException">it was cancelled</exception>
    public ScenarioResult? Play(Scenario scenario, DiagnosticBag diagnostics, IProgress<double>? progress, CancellationToken cancellation) =>
        Bind(scenario, diagnostics)?.Play(progress, cancellation);

    /// <summary>Only checks that a scenario fits; plays nothing.</summary>
    internal ScenarioRun? Bind(Scenario scenario, DiagnosticBag diagnostics)
    {
        PlantRun plant = PlantRun.Start(scenario.Plant ?? _plant, (ulong)scenario.Seed);
        ClosedLoop? loop = ClosedLoop.Join(new SpecialisingStepper(_system, ClosedLoop.Observed(_system, _metadata)), plant, _metadata, scenario.Span, diagnostics);
        return loop is null ? null : ScenarioRun.Bind(loop, scenario, diagnostics);
    }
}
