using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>
/// A script of what the operator does and what fails, and what is expected to come of it. The run ends
/// at <see cref="DurationSeconds"/>, or sooner when <see cref="Until"/> has happened.
/// </summary>
public sealed record Scenario(string Name, string Description, double DurationSeconds, SourceSpan Span)
{
    public Moment? Until { get; init; }

    /// <summary>Seeds the plant's noise and tolerances.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Null where the programs' defaults count.</summary>
    public NamedRecipe? Recipe { get; init; }

    /// <summary>Before the start, in this order; a later one of a parameter counts.</summary>
    public ImmutableArray<ParameterSetting> Settings { get; init; } = [];

    /// <summary>Where any are given the run is one without the plant: all other inputs are at rest.</summary>
    public ImmutableArray<InputValue> Inputs { get; init; } = [];

    public ImmutableArray<ScriptedAction> Actions { get; init; } = [];

    /// <summary>How an operator answers prompts, each time that one is asked.</summary>
    public ImmutableArray<OperatorRule> Operator { get; init; } = [];

    /// <summary>Quantities of the plant that this run has otherwise than the site's description.</summary>
    public ImmutableArray<PlantChange> PlantChanges { get; init; } = [];

    /// <summary>The plant with these changes; null where there are none and it is the site's.</summary>
    public PlantModel? Plant { get; init; }

    public ImmutableArray<Expectation> Expectations { get; init; } = [];
}
