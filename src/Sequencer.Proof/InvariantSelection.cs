using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof;

/// <summary>
/// Which of many guessed facts about the states hold together in every run: the largest set of which all are true
/// initially and which each scan keeps. Facts are struck out that a scan from inside the rest can break, until
/// none can be broken (Flanagan, Leino: Houdini, an annotation assistant for ESC/Java, FME 2001).
/// </summary>
internal static class InvariantSelection
{
    /// <param name="system">Its assumptions are not used: the facts hold in every run.</param>
    /// <param name="candidates">Booleans over the system's states.</param>
    /// <param name="budget">Throws when it is spent or cancelled.</param>
    /// <returns>The facts that are left, in the order given.</returns>
    public static ImmutableArray<Expression> Largest(TransitionSystem system, IReadOnlyList<Expression> candidates, Budget budget) =>
        Largest(system, [], candidates, KeptTogether, budget);

    /// <summary>The same, of the runs that keep the system's assumptions.</summary>
    public static ImmutableArray<Expression> UnderAssumptions(TransitionSystem system, IReadOnlyList<Expression> candidates, Budget budget) =>
        Largest(system, system.Assumptions, candidates, (circuit, assumed, facts) => Kept(circuit.Solver, assumed, facts), budget);

    private static ImmutableArray<Expression> Largest(TransitionSystem system, ImmutableArray<Assumption> assumptions, IReadOnlyList<Expression> candidates, Func<Circuit, Literal[], IEnumerable<InductiveFact>, List<InductiveFact>> select, Budget budget)
    {
        Expression[] left = [.. TrueInitially(system, candidates)];
        while (true)
        {
            Expression[] kept = Kept(system, assumptions, left, select, budget);
            if (kept.Length == left.Length || !left.Except(kept).Any(struck => Scan.EqualVariables(struck) is not null))
            {
                return [.. kept];
            }

            // What was struck out had been taken for granted by variables that share their bits.
            left = kept;
        }
    }

    private static Expression[] Kept(TransitionSystem system, ImmutableArray<Assumption> assumptions, Expression[] candidates, Func<Circuit, Literal[], IEnumerable<InductiveFact>, List<InductiveFact>> select, Budget budget)
    {
        Scan scan = Scan.FromWhere(new Circuit(new Solver(budget)), system, candidates);
        Encoding after = scan.EncodingAfter();
        Literal[] assumed = [.. assumptions.Select(assumption => scan.Encoding.Boolean(assumption.Holds))];
        return [.. select(scan.Circuit, assumed, candidates.Select(candidate => new InductiveFact(candidate, scan.Encoding.Boolean(candidate), after.Boolean(candidate)))).Select(fact => fact.Meaning)];
    }

    /// <summary>The facts that are left once none can be broken by a scan before which all of them hold, and what is assumed. Each is asked for by itself.</summary>
    public static List<InductiveFact> Kept(Solver solver, Literal[] assumed, IEnumerable<InductiveFact> candidates)
    {
        List<InductiveFact> facts = [.. candidates];
        while (facts.Find(fact => !fact.IsShown) is { } asked)
        {
            if (solver.Solve([.. assumed, .. facts.Select(fact => fact.Before), !asked.After]))
            {
                facts.RemoveAll(fact => !solver.ModelValue(fact.After));
                HashSet<Literal> left = [.. assumed, .. facts.Select(fact => fact.Before)];
                facts.ForEach(fact => fact.ForgetUnless(left));
            }
            else
            {
                asked.ShowBy([.. solver.Core.Where(literal => literal != !asked.After)]);
            }
        }

        return facts;
    }

    /// <summary>The same, all asked for at once: quicker where many are struck out and little counting is in them.</summary>
    private static List<InductiveFact> KeptTogether(Circuit circuit, Literal[] assumed, IEnumerable<InductiveFact> candidates)
    {
        List<InductiveFact> facts = [.. candidates];
        while (facts.Count > 0 && circuit.Solver.Solve([.. assumed, .. facts.Select(fact => fact.Before), circuit.Or(facts.Select(fact => !fact.After))]))
        {
            facts.RemoveAll(fact => !circuit.Solver.ModelValue(fact.After));
        }

        return facts;
    }

    private static IEnumerable<Expression> TrueInitially(TransitionSystem system, IReadOnlyList<Expression> candidates)
    {
        Interpreter interpreter = new(system, [.. candidates]);
        interpreter.Initialise();
        system.Inputs.Select(input => input.Range.Minimum).ToArray().CopyTo(interpreter.Inputs, 0);
        interpreter.Step();
        return candidates.Where((_, index) => interpreter.Observed[index] != 0);
    }
}
