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
        Circuit circuit = new(solver);
        Scan scan = Scan.FromWhere(circuit, system, invariant.Kind == ExpressionKind.And ? invariant.Operands : [invariant]);
        solver.AddClause(scan.Encoding.Boolean(invariant));
        Literal broken = !scan.Encoding.Boolean(system.Requirements[0].Holds);
        Literal lost = !scan.EncodingAfter().Boolean(invariant);
        Literal violated = circuit.Or(broken, lost);
        Literal[] assumed = [.. system.Assumptions.Select(assumption => scan.Encoding.Boolean(assumption.Holds))];
        if (solver.Solve([violated, .. assumed]))
        {
            return null;
        }

        List<Literal> needed = [.. assumed.Where(solver.Core.Contains).Distinct()];
        foreach (Literal candidate in needed.ToArray())
        {
            Literal[] others = [.. needed.Where(other => other != candidate)];
            if (!solver.Solve([violated, .. others]))
            {
                needed.Remove(candidate);
            }
        }

        return [.. system.Assumptions.Where((_, index) => needed.Contains(assumed[index]))];
    }

    private static bool HoldsInitially(TransitionSystem system, Expression invariant)
    {
        AffineScan scan = new([invariant]);
        scan.Evaluate([], SearchRun.InitialStates(system).AsSpan());
        return scan.Value(scan.PlaceOf(invariant)) != 0;
    }
}
