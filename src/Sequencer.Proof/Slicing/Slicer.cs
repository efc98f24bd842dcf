using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Slicing;

/// <summary>
/// Cuts out what a requirement can depend on: the variables it and its guesses read, whatever their next values read,
/// and, where asked, the assumptions that share a variable with these (and then what they read).
/// Leaving an assumption out only adds runs, so a requirement that holds of the slice holds of the whole;
/// a trace is judged on the whole.
/// </summary>
internal static class Slicer
{
    public static Slice Cut(TransitionSystem whole, Requirement requirement, AssumptionScope scope)
    {
        (VariableSet cone, ImmutableArray<Assumption> kept) = Cone(whole, requirement, scope);
        return Rebuild(whole, requirement, cone, kept);
    }

    /// <summary>The fingerprint of all that the requirement can depend on, as it stands in the whole system.</summary>
    public static string Fingerprint(TransitionSystem whole, Requirement requirement)
    {
        (VariableSet cone, ImmutableArray<Assumption> kept) = Cone(whole, requirement, AssumptionScope.All);
        return MeaningHash.OfPart(whole, whole.Inputs.Where(cone.Contains), whole.States.Where(state => cone.Contains(state.Variable)), kept, requirement);
    }

    private static (VariableSet Cone, ImmutableArray<Assumption> Assumptions) Cone(TransitionSystem whole, Requirement requirement, AssumptionScope scope)
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

        return (cone, [.. whole.Assumptions.Where(kept.Contains)]);
    }

    private static Slice Rebuild(TransitionSystem whole, Requirement requirement, VariableSet cone, ImmutableArray<Assumption> assumptions)
    {
        ImmutableArray<Variable> inputs = [.. whole.Inputs.Where(cone.Contains)];
        ImmutableArray<StateVariable> states = [.. whole.States.Where(state => cone.Contains(state.Variable))];
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
        return new Slice(whole, part, builder, inputs, [.. states.Select(state => state.Variable)]);
    }
}
