using System.Collections.Immutable;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Sites.Trials;

/// <summary>What one run of a set has: its scenario, whole, and beside it what was drawn.</summary>
/// <param name="Run">its number, from 1</param>
/// <param name="Scenario">what is played</param>
/// <param name="Base">the name of the scenario that it was made of</param>
/// <param name="Recipe">the recipe, or <see cref="TrialDescription.ScenariosOwn"/></param>
/// <param name="Faults">none, one or two</param>
/// <param name="Tolerances">the value of each tolerance, in its unit; not numbers where the plant is as described</param>
/// <param name="Delays">the delay of each prompt of the operator, in seconds; not a number where he never answers</param>
internal sealed record TrialDraw(
    int Run,
    Scenario Scenario,
    string Base,
    string Recipe,
    ImmutableArray<FaultDraw> Faults,
    ImmutableArray<double> Tolerances,
    ImmutableArray<double> Delays);
