using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Insight;

/// <summary>What a requirement that holds leans on, asked of an invariant that is known already.</summary>
public static class Leaning
{
    /// <summary>
    /// Carries the invariant over to another system by the names of the variables, leaves out what speaks of variables that are
    /// not there, and checks it anew.
    /// </summary>
    /// <param name="system">May differ from the system that the invariant was found in: nothing is taken over but the guess.</param>
    /// <param name="requirement">One of the system's.</param>
    /// <param name="invariant">A Boolean over states of the other system.</param>
    /// <param name="options">The budget.</param>
    /// <param name="cancellation">Ends the check.</param>
    /// <returns>
    /// Names of assumptions, in the system's order, of which none can be left out while the invariant is to prove the requirement;
    /// null where it does not, or the budget was spent.
    /// </returns>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static ImmutableArray<string>? Of(
        TransitionSystem system, Requirement requirement, Expression invariant, ProofOptions options, CancellationToken cancellation)
    {
        Slice slice = Slicer.Cut(system, requirement, AssumptionScope.Related);
        try
        {
            ImmutableArray<Assumption>? leanedOn = InvariantCheck.Confirm(
                slice.System, Carry(invariant, slice), new Budget(options.Conflicts, cancellation));
            return leanedOn is { } found ? [.. found.Select(assumption => assumption.Name)] : null;
        }
        catch (BudgetSpentException)
        {
            return null;
        }
    }

    private static Expression Carry(Expression invariant, Slice slice)
    {
        Dictionary<string, Variable> own = slice.System.States.ToDictionary(state => state.Variable.Name, state => state.Variable, StringComparer.Ordinal);
        Dictionary<Variable, Expression> images = [];
        foreach (Variable variable in ExpressionGraph.Variables([invariant]))
        {
            if (own.TryGetValue(variable.Name, out Variable? image) && image.Sort == variable.Sort)
            {
                images.Add(variable, slice.Builder.Variable(image));
            }
        }

        IEnumerable<Expression> facts = invariant.Kind == ExpressionKind.And ? invariant.Operands : [invariant];
        Expression[] carried = [.. facts.Where(fact => ExpressionGraph.Variables([fact]).All(images.ContainsKey))];
        return slice.Builder.And(slice.Builder.Substitute(carried, images));
    }
}
