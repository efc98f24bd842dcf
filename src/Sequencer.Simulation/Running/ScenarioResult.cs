using System.Collections.Immutable;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Simulation.Running;

/// <summary>A scenario played to its end; <see cref="Undone"/> are actions whose moment never came.</summary>
public sealed record ScenarioResult(
    Scenario Scenario,
    RunRecord Record,
    ImmutableArray<ExpectationResult> Expectations,
    ImmutableArray<UndoneDeed> Undone,
    bool EndedByDuration)
{
    /// <summary>Every expectation came true, every action was done, and the plant model kept its meaning.</summary>
    public bool Passed => Record.Failure is null && Undone.IsEmpty && Expectations.All(expectation => expectation.Passed);
}
