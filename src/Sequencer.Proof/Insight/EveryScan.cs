using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Insight;

/// <summary>
/// One scan from every state that known invariants allow, which is from every state that a run reaches and from some that none
/// does. So what is always or never so here is so in every run, and what is sometimes so here may be so in none.
/// </summary>
public sealed class EveryScan
{
    private readonly Solver _solver;
    private readonly Circuit _circuit;
    private readonly Scan _scan;

    private EveryScan(TransitionSystem system, IReadOnlyCollection<Expression> invariants, Budget budget)
    {
        _solver = new Solver(budget);
        _circuit = new Circuit(_solver);
        _scan = Scan.FromAnywhere(_circuit, system);
        foreach (Expression fact in invariants.Concat(system.Assumptions.Select(assumption => assumption.Holds)))
        {
            _solver.AddClause(_scan.Encoding.Boolean(fact));
        }
    }

    /// <param name="system">The system; its assumptions are kept.</param>
    /// <param name="verdicts">Their invariants are used.</param>
    /// <param name="guesses">Facts over the states that may or may not hold; those are used that hold together in every run.</param>
    /// <param name="cancellation">Ends the selection and every question.</param>
    public static EveryScan Of(
        TransitionSystem system, IEnumerable<Verdict> verdicts, IReadOnlyList<Expression> guesses, CancellationToken cancellation)
    {
        Budget budget = new(long.MaxValue, cancellation);
        IEnumerable<Expression> proved = verdicts.OfType<Holds>().SelectMany(holds =>
            holds.Invariant.Kind == ExpressionKind.And ? holds.Invariant.Operands : [holds.Invariant]);
        return new EveryScan(system, [.. proved, .. InvariantSelection.Largest(system, guesses, budget)], budget);
    }

    /// <returns>For each fact asked how often it is so in the scans in which all given facts are; null where there is no such scan.</returns>
    public ImmutableArray<Seen>? Judge(IEnumerable<ScanFact> given, IReadOnlyList<ScanFact> asked)
    {
        Literal[] premises = [.. given.Select(Meaning)];
        Literal[] facts = [.. asked.Select(Meaning)];
        if (!_solver.Solve(premises))
        {
            return null;
        }

        bool[] first = [.. facts.Select(_solver.ModelValue)];
        bool[] changes = new bool[facts.Length];
        List<int> open = [.. Enumerable.Range(0, facts.Length)];
        while (open.Count > 0)
        {
            Literal other = _circuit.Or(open.Select(fact => facts[fact].NegatedIf(first[fact])));
            if (!_solver.Solve([.. premises, other]))
            {
                break;
            }

            foreach (int fact in open.Where(fact => _solver.ModelValue(facts[fact]) != first[fact]).ToArray())
            {
                changes[fact] = true;
                open.Remove(fact);
            }
        }

        return [.. first.Zip(changes, (isSo, both) => both ? Seen.Sometimes : isSo ? Seen.Always : Seen.Never)];
    }

    private Literal Meaning(ScanFact fact) => fact.Value.Sort == Sort.Boolean
        ? _scan.Encoding.Boolean(fact.Value).NegatedIf(fact.Is == 0)
        : Arithmetic.Equal(_circuit, _scan.Encoding.Vector(fact.Value), Arithmetic.Constant(_circuit, fact.Is));
}
