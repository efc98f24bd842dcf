using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Plant;
using Sequencer.Simulation.Metadata;

namespace Sequencer.Simulation.Loop;

/// <summary>
/// The one namespace of a run. A program's fact wins over a plant quantity of the same name; a
/// definition (the physical fact of a switch) has the switch's own tag.
/// </summary>
internal sealed class LoopNames
{
    public const int PlantDecimals = 4;

    private readonly Dictionary<string, ValueSource> _sources = new(StringComparer.Ordinal);

    public LoopNames(Stepper stepper, IPlant plant, SiteMetadata site)
    {
        TransitionSystem system = stepper.System;
        foreach (Variable input in system.Inputs)
        {
            Add(input.Name, ValueOrigin.Input, input.Index, site.Signal(input.Name));
        }

        foreach (StateVariable state in system.States)
        {
            Add(state.Variable.Name, ValueOrigin.State, state.Variable.Index, site.Signal(state.Variable.Name));
        }

        for (int index = 0; index < system.Outputs.Length; index++)
        {
            string name = system.Outputs[index].Name;
            Add(name, ValueOrigin.Output, index, site.Signal(name) is { Kind: SignalKind.Setpoint } setpoint ? setpoint : null);
        }

        ImmutableArray<Definition> facts = Facts(system, site);
        for (int index = 0; index < facts.Length; index++)
        {
            Add(facts[index].Name, ValueOrigin.Observed, system.Alarms.Length + index, site.Signal(facts[index].Name));
        }

        AddPlant(plant.Quantities, ValueOrigin.PlantQuantity);
        AddPlant(plant.Totals, ValueOrigin.PlantTotal);
    }

    public IEnumerable<string> All => _sources.Keys;

    public static ImmutableArray<Expression> Observed(TransitionSystem system, SiteMetadata site) =>
        [.. system.Alarms.Select(alarm => alarm.Raised), .. Facts(system, site).Select(fact => fact.Value), .. system.Requirements.Select(requirement => requirement.Holds)];

    public ValueSource? Find(string name) => _sources.GetValueOrDefault(name);

    private static ImmutableArray<Definition> Facts(TransitionSystem system, SiteMetadata site) =>
        [.. system.Definitions.Where(definition => site.Signal(definition.Name) is not null)];

    private void AddPlant(ImmutableArray<PlantQuantity> quantities, ValueOrigin origin)
    {
        for (int index = 0; index < quantities.Length; index++)
        {
            _sources.TryAdd(quantities[index].Name, new ValueSource(quantities[index].Name, origin, index, 1, quantities[index].Unit, PlantDecimals));
        }
    }

    private void Add(string name, ValueOrigin origin, int place, SignalMetadata? signal) =>
        _sources.TryAdd(name, new ValueSource(name, origin, place, (double)(signal?.Resolution ?? 1), signal?.Unit ?? "", signal?.Decimals ?? 0));
}
