using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Slicing;

/// <summary>
/// Cuts out what a requirement can depend on: the variables it and its guesses read, whatever their next values read,
/// and, where asked, the assumptions that share a variable with these (and then what they read).
/// Leaving an assumption out only adds runs, so a requirement that holds of the slice holds of the whole;
/// a trace is judged on the whole. Settled states (<see cref="SettledStates"/>) are put in first.
/// </summary>
internal static class Slicer
{
    public static Slice Cut(TransitionSystem whole, Requirement requirement, AssumptionScope scope)
    {
        SettledStates settled = whole.Settled;
        SettledState[] read = [.. Cone(whole, requirement, scope).Settled];
        if (read.Length == 0)
        {
            return Rebuild(whole, whole, requirement, scope, read);
        }

        ImmutableArray<Expression> put = settled.Put([requirement.Holds, .. requirement.Guesses]);
        return Rebuild(whole, settled.Rest, requirement with { Holds = put[0], Guesses = [.. put.Skip(1)] }, scope, read);
    }

    /// <summary>The settled states among all that the requirement can depend on.</summary>
    public static IReadOnlyList<SettledState> Settled(TransitionSystem whole, Requirement requirement) =>
        [.. Cone(whole, requirement, AssumptionScope.All).Settled];

    /// <summary>The fingerprint of all that the requirement can depend on, as it stands in the whole system.</summary>
    public static string Fingerprint(TransitionSystem whole, Requirement requirement)
    {
        (VariableSet cone, ImmutableArray<Assumption> kept, _) = Cone(whole, requirement, AssumptionScope.All);
        return MeaningHash.OfPart(whole, whole.Inputs.Where(cone.Contains), whole.States.Where(state => cone.Contains(state.Variable)), kept, requirement);
    }

    private static (VariableSet Variables, ImmutableArray<Assumption> Assumptions, IEnumerable<SettledState> Settled) Cone(TransitionSystem whole, Requirement requirement, AssumptionScope scope)
    {
        VariableSet cone = new(whole);
        cone.Reach([requirement.Holds, .. requirement.Guesses]);
        List<Assumption> kept = [];
        bool grew = scope != AssumptionScope.None;
        while (grew)
        {
            grew = false;
            foreach (Assumption assumption in whole.Assumptions)
            {
                bool shares = scope == AssumptionScope.All || ExpressionGraph.Variables([assumption.Holds]).Any(cone.Contains);
                if (shares && !kept.Contains(assumption))
                {
                    kept.Add(assumption);
                    cone.Reach([assumption.Holds]);
                    grew = true;
                }
            }
        }

        return (cone, [.. whole.Assumptions.Where(kept.Contains)], whole.Settled.All.Where(state => cone.Contains(state.Variable)));
    }

    /// <param name="whole">What the slice is of.</param>
    /// <param name="rest">The same, or what is left of it when settled states are put in.</param>
    /// <param name="requirement">Over the variables of <paramref name="rest"/>.</param>
    /// <param name="scope">Which assumptions to take along.</param>
    /// <param name="settled">What was put in.</param>
    private static Slice Rebuild(TransitionSystem whole, TransitionSystem rest, Requirement requirement, AssumptionScope scope, IReadOnlyList<SettledState> settled)
    {
        (VariableSet cone, ImmutableArray<Assumption> assumptions, _) = Cone(rest, requirement, scope);
        ImmutableArray<Variable> inputs = [.. rest.Inputs.Where(cone.Contains)];
        ImmutableArray<StateVariable> states = [.. rest.States.Where(state => cone.Contains(state.Variable))];
        ExpressionBuilder builder = new();
        Dictionary<Variable, Expression> images = [];
        ImmutableArray<Variable> ownInputs = [.. inputs.Select((input, index) => input with { Index = index })];
        ImmutableArray<Variable> ownStates = [.. states.Select((state, index) => state.Variable with { Index = index })];
        for (int index = 0; index < inputs.Length; index++)
        {
            images.Add(inputs[index], builder.Variable(ownInputs[index]));
        }

        for (int index = 0; index < states.Length; index++)
        {
            images.Add(states[index].Variable, builder.Variable(ownStates[index]));
        }

        IReadOnlyList<Expression> rebuilt = builder.Substitute(
            [requirement.Holds, .. assumptions.Select(assumption => assumption.Holds), .. states.Select(state => state.Next), .. requirement.Guesses], images);
        TransitionSystem part = TransitionSystem.Create(
            whole.Name,
            whole.ScanMilliseconds,
            ownInputs,
            [.. states.Select((state, index) => state with { Variable = ownStates[index], Next = rebuilt[1 + assumptions.Length + index] })],
            [],
            [],
            [.. assumptions.Select((assumption, index) => assumption with { Holds = rebuilt[1 + index] })],
            [requirement with { Holds = rebuilt[0], Guesses = [.. rebuilt.Skip(1 + assumptions.Length + states.Length)] }],
            []);
        return new Slice(whole, part, builder, inputs, [.. states.Select(state => state.Variable)], settled);
    }
}
