using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof;

/// <summary>
/// Induction with many facts, each asked for by itself: all of them hold before a scan, one of them is denied behind it.
/// Together that is the same as to deny their conjunction, and each question is small. What was found is kept for
/// the questions that follow; states that facts define are no variables of their own.
/// </summary>
internal static class FactByFact
{
    /// <returns>
    /// The largest part of the facts that is true initially and kept by every scan, where it implies the requirement of the system; null
    /// where it does not. The last pass, on an encoding of its own, asks for each of them and for the requirement: it is the check. Where
    /// it does not, also what some scan breaks first: where to look for what is not as it was thought.
    /// </returns>
    /// <param name="system">A system with one requirement. Its assumptions are not used.</param>
    /// <param name="candidates">Booleans over the system's states.</param>
    /// <param name="budget">Throws when it is spent or cancelled.</param>
    public static (ImmutableArray<Expression>? Found, FactsGap? Gap) Invariant(TransitionSystem system, IReadOnlyList<Expression> candidates, Budget budget)
    {
        Expression[] left = [.. TrueInitially(system, candidates)];
        ImmutableArray<Expression> required = InvariantCheck.Conjuncts(system.Requirements.Single().Holds);
        FactsGap? gap = null;
        while (true)
        {
            Pass pass = new(system, left, budget);
            HashSet<Expression> broken = pass.Broken();
            ImmutableArray<Expression> lost = [.. left.Where(fact => broken.Contains(fact) && pass.Defines(fact))];
            bool isFirstGap = gap is null && lost.Length > 0;
            ImmutableArray<Expression> unmet = isFirstGap || broken.Count == 0 ? [.. required.Where(one => !pass.Implies(one))] : [];
            if (isFirstGap)
            {
                gap = new FactsGap([.. left], lost, unmet);
            }

            if (broken.Count == 0)
            {
                return unmet.IsEmpty ? ([.. left], null) : (null, gap ?? new FactsGap([.. left], lost, unmet));
            }

            left = [.. left.Where(fact => !broken.Contains(fact))];
        }
    }

    private static IEnumerable<Expression> TrueInitially(TransitionSystem system, IReadOnlyList<Expression> candidates)
    {
        AffineScan scan = new(candidates);
        scan.Evaluate([], SearchRun.InitialStates(system).AsSpan());
        return candidates.Where(fact => scan.Value(scan.PlaceOf(fact)) != 0);
    }

    /// <summary>All facts taken for granted before one scan.</summary>
    private sealed class Pass
    {
        private readonly Solver _solver;
        private readonly Circuit _circuit;
        private readonly Scan _scan;
        private readonly Encoding _after;
        private readonly Expression[] _facts;
        private readonly DefinedStates _defined;

        public Pass(TransitionSystem system, Expression[] facts, Budget budget)
        {
            _facts = facts;
            _defined = new DefinedStates(facts);
            _solver = new Solver(budget);
            _circuit = new Circuit(_solver);
            _scan = Scan.FromWhere(_circuit, system, _defined);
            _after = _scan.EncodingAfter();
            foreach (Expression fact in facts)
            {
                _solver.AddClause(_scan.Encoding.Boolean(fact));
            }
        }

        /// <summary>
        /// Facts that some scan breaks. Facts that define nothing come first and alone: with fewer of them the
        /// others would have to be asked for again.
        /// </summary>
        public HashSet<Expression> Broken()
        {
            HashSet<Expression> broken = [.. _facts.Where(fact => !_defined.Used.Contains(fact) && !Follows(_after.Boolean(fact)))];
            if (broken.Count == 0)
            {
                broken.UnionWith(_facts.Where(fact => _defined.Used.Contains(fact) && !Follows(_after.Boolean(fact))));
            }

            return broken;
        }

        public bool Defines(Expression fact) => _defined.Used.Contains(fact);

        public bool Implies(Expression required) => Follows(_scan.Encoding.Boolean(required));

        private bool Follows(Literal literal)
        {
            if (literal == _circuit.True)
            {
                return true;
            }

            _circuit.Prefer(literal);
            if (_solver.Solve(!literal))
            {
                return false;
            }

            _solver.AddClause(literal);
            return true;
        }
    }
}
