using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof;

/// <summary>
/// Checks an invariant without trust in who found it, on a fresh encoding: it is true initially, each
/// scan keeps it, and with it the requirement holds; all within the variables' ranges.
/// </summary>
internal static class InvariantCheck
{
    /// <returns>The assumptions that the obligations lean on, in order; null if an obligation fails.</returns>
    public static ImmutableArray<Assumption>? Confirm(TransitionSystem system, Expression invariant, Budget budget)
    {
        if (!HoldsInitially(system, invariant))
        {
            return null;
        }

        Solver solver = new(budget);
        Scan scan = Scan.FromWhere(new Circuit(solver), system, Conjuncts(invariant));
        solver.AddClause(scan.Encoding.Boolean(invariant));
        Encoding after = scan.EncodingAfter();
        Literal[] assumed = [.. system.Assumptions.Select(assumption => scan.Encoding.Boolean(assumption.Holds))];
        Literal[] kept = [scan.Encoding.Boolean(system.Requirements[0].Holds), .. Conjuncts(invariant).Select(after.Boolean)];
        return Needed(solver, [], kept, assumed) is { } needed ? [.. system.Assumptions.Where((_, index) => needed.Contains(assumed[index]))] : null;
    }

    /// <summary>
    /// Those of the assumptions that it takes to show all of the literals, from which each was tried to be left out; null if one of them does not follow.
    /// Each is asked for by itself, and what follows is kept for the questions after it: together they say no less than all at once, and are small.
    /// </summary>
    /// <param name="solver">Knows what a scan does.</param>
    /// <param name="granted">Holds before the scan, in these questions only.</param>
    /// <param name="kept">What is to be shown.</param>
    /// <param name="assumed">The assumptions.</param>
    public static IReadOnlyList<Literal>? Needed(Solver solver, Literal[] granted, Literal[] kept, IReadOnlyList<Literal> assumed)
    {
        IReadOnlyList<Literal>? needed = Follow(solver, granted, kept, assumed);
        foreach (Literal candidate in needed?.ToArray() ?? [])
        {
            needed = Follow(solver, granted, kept, [.. needed!.Where(other => other != candidate)]) ?? needed;
        }

        return needed;
    }

    private static IReadOnlyList<Literal>? Follow(Solver solver, Literal[] granted, Literal[] kept, IReadOnlyList<Literal> assumed)
    {
        HashSet<Literal> needed = [];
        foreach (Literal literal in kept)
        {
            if (solver.Solve([.. granted, .. assumed, !literal]))
            {
                return null;
            }

            Literal[] core = [.. solver.Core.Where(one => one != !literal)];
            needed.UnionWith(core);
            solver.AddClause([literal, .. core.Select(one => !one)]);
        }

        return [.. assumed.Where(needed.Contains).Distinct()];
    }

    public static ImmutableArray<Expression> Conjuncts(Expression invariant) => invariant.Kind == ExpressionKind.And ? invariant.Operands : [invariant];

    public static bool HoldsInitially(TransitionSystem system, Expression invariant)
    {
        AffineScan scan = new([invariant]);
        scan.Evaluate([], SearchRun.InitialStates(system).AsSpan());
        return scan.Value(scan.PlaceOf(invariant)) != 0;
    }
}
