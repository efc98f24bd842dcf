using System.Collections.Immutable;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Simulation.Running;

/// <summary>A scenario played to its end; <see cref="Idle"/> are actions whose moment never came.</summary>
public sealed record ScenarioResult(
    Scenario Scenario,
    RunRecord Record,
    ImmutableArray<ExpectationResult> Expectations,
    ImmutableArray<ScriptedAction> Idle,
    bool EndedByDuration)
{
    public bool Passed => Expectations.All(expectation => expectation.Passed);
}
