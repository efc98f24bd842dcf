using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Simulation.Loop;

/// <summary>Where a unit's state and steps are among the system's state variables.</summary>
public sealed record UnitPlaces(string Name, int StatePlace, ImmutableArray<StepPlace> Steps)
{
    internal const string StateSuffix = ".state";
    private const string StepMark = ".step";
    private const string ActiveSuffix = ".active";

    /// <summary>The units of a system, from the names of its state variables, in their order; alarms have a state too, and no steps.</summary>
    public static ImmutableArray<UnitPlaces> Of(TransitionSystem system)
    {
        ImmutableArray<UnitPlaces>.Builder units = ImmutableArray.CreateBuilder<UnitPlaces>();
        foreach (StateVariable state in system.States)
        {
            string name = state.Variable.Name;
            if (state.Variable.Sort == Sort.Integer && name.EndsWith(StateSuffix, StringComparison.Ordinal))
            {
                string unit = name[..^StateSuffix.Length];
                ImmutableArray<StepPlace> steps = StepsOf(system, unit);
                if (!steps.IsEmpty)
                {
                    units.Add(new UnitPlaces(unit, state.Variable.Index, steps));
                }
            }
        }

        return units.ToImmutable();
    }

    private static ImmutableArray<StepPlace> StepsOf(TransitionSystem system, string unit)
    {
        string prefix = unit + StepMark;
        return [.. system.States
            .Where(state => state.Variable.Name.StartsWith(prefix, StringComparison.Ordinal)
                && state.Variable.Name.EndsWith(ActiveSuffix, StringComparison.Ordinal))
            .Select(state => new StepPlace(state.Variable.Name[prefix.Length..^ActiveSuffix.Length], state.Variable.Index))];
    }
}
