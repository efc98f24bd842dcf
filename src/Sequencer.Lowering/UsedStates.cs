using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Lowering;

/// <summary>
/// A system without the states that nothing reads: a condition is lowered in both its readings, of which
/// often only one is asked for, and the clocks of the other would count for nobody.
/// </summary>
internal static class UsedStates
{
    public static TransitionSystem Only(TransitionSystem system)
    {
        HashSet<Variable> used = Used(system);
        if (used.Count == system.States.Length)
        {
            return system;
        }

        ExpressionBuilder build = new();
        Dictionary<Variable, Variable> renumbered = [];
        foreach (StateVariable state in system.States.Where(state => used.Contains(state.Variable)))
        {
            renumbered.Add(state.Variable, state.Variable with { Index = renumbered.Count });
        }

        Dictionary<Variable, Expression> replacement = renumbered.ToDictionary(pair => pair.Key, pair => build.Variable(pair.Value));
        Dictionary<Expression, Expression> images = Images(system, used, build, replacement);
        return TransitionSystem.Create(
            system.Name,
            system.ScanMilliseconds,
            system.Inputs,
            [.. system.States.Where(state => used.Contains(state.Variable)).Select(state => state with { Variable = renumbered[state.Variable], Next = images[state.Next] })],
            [.. system.Outputs.Select(output => output with { Value = images[output.Value] })],
            [.. system.Definitions.Select(definition => definition with { Value = images[definition.Value] })],
            [.. system.Assumptions.Select(assumption => assumption with { Holds = images[assumption.Holds] })],
            [.. system.Requirements.Select(requirement => requirement with { Holds = images[requirement.Holds], Guesses = [.. requirement.Guesses.Select(guess => images[guess])] })],
            [.. system.Alarms.Select(alarm => alarm with { Raised = images[alarm.Raised] })],
            [.. system.Goals.Select(goal => goal with { Reached = images[goal.Reached], Meanwhile = images[goal.Meanwhile] })]);
    }

    private static Dictionary<Expression, Expression> Images(
        TransitionSystem system, HashSet<Variable> used, ExpressionBuilder build, Dictionary<Variable, Expression> replacement)
    {
        Expression[] roots = [.. Roots(system), .. system.States.Where(state => used.Contains(state.Variable)).Select(state => state.Next)];
        IReadOnlyList<Expression> rebuilt = build.Substitute(roots, replacement);
        Dictionary<Expression, Expression> images = [];
        for (int index = 0; index < roots.Length; index++)
        {
            images[roots[index]] = rebuilt[index];
        }

        return images;
    }

    private static HashSet<Variable> Used(TransitionSystem system)
    {
        Dictionary<Variable, Expression> next = system.States.ToDictionary(state => state.Variable, state => state.Next);
        HashSet<Variable> used = [];
        Expression[] roots = [.. Roots(system)];
        while (roots.Length > 0)
        {
            roots =
            [
                .. ExpressionGraph.Variables(roots).Where(variable => variable.Role == VariableRole.State && used.Add(variable)).Select(variable => next[variable]),
            ];
        }

        return used;
    }

    private static ImmutableArray<Expression> Roots(TransitionSystem system) =>
    [
        .. system.Outputs.Select(output => output.Value),
        .. system.Definitions.Select(definition => definition.Value),
        .. system.Assumptions.Select(assumption => assumption.Holds),
        .. system.Requirements.Select(requirement => requirement.Holds),
        .. system.Requirements.SelectMany(requirement => requirement.Guesses),
        .. system.Alarms.Select(alarm => alarm.Raised),
        .. system.Goals.Select(goal => goal.Reached),
        .. system.Goals.Select(goal => goal.Meanwhile),
    ];
}
