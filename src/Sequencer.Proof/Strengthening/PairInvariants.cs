using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Strengthening;

/// <summary>
/// Guesses that no state has two facts at once which no state reached so far had together (two steps
/// active, a clock that is not zero outside its step), and keeps the guesses that are inductive together
/// (after Flanagan and Leino, "Houdini, an annotation assistant", FME 2001).
/// </summary>
internal sealed class PairInvariants
{
    private readonly Circuit _circuit;
    private readonly Encoding _before;
    private readonly Encoding _after;
    private readonly Literal _assumed;
    private readonly FactTable _facts;

    private PairInvariants(TransitionSystem system, FactTable facts, Budget budget)
    {
        _facts = facts;
        _circuit = new Circuit(new Solver(budget));
        Scan scan = Scan.FromAnywhere(_circuit, system);
        _before = scan.Encoding;
        _after = scan.EncodingAfter();
        _assumed = _circuit.And(system.Assumptions.Select(assumption => _before.Boolean(assumption.Holds)));
    }

    /// <summary>Cubes that no reachable state is in.</summary>
    public static IReadOnlyList<Cube> Find(TransitionSystem system, FactTable facts, IEnumerable<long[]> reached, Budget budget)
    {
        List<Cube> guesses = Guess(system, facts, [.. reached.Select(states => facts.Values(states))], budget);
        return new PairInvariants(system, facts, budget).Sift(guesses);
    }

    private static List<Cube> Guess(TransitionSystem system, FactTable facts, List<bool[]> samples, Budget budget)
    {
        Literal[] literals = [.. Enumerable.Range(0, facts.Count).SelectMany(fact => Interesting(system, facts, fact))];
        List<Cube> guesses = [];
        for (int first = 0; first < literals.Length; first++)
        {
            budget.ThrowIfCancelled();
            List<bool[]> with = samples.FindAll(sample => FactTable.Satisfies(sample, literals[first]));
            for (int second = first + 1; second < literals.Length && with.Count > 0; second++)
            {
                bool opposite = literals[first].Variable == literals[second].Variable;
                if (!opposite && !with.Exists(sample => FactTable.Satisfies(sample, literals[second])))
                {
                    guesses.Add(new Cube([literals[first], literals[second]]));
                }
            }

            if (with.Count == 0)
            {
                guesses.Add(new Cube([literals[first]]));
                guesses.AddRange(literals.Where(other => other.Variable != literals[first].Variable).Select(other => new Cube([literals[first], other])));
            }
        }

        return guesses;
    }

    /// <summary>Boolean states either way, an enumeration's having a value, a count's not being zero.</summary>
    private static IEnumerable<Literal> Interesting(TransitionSystem system, FactTable facts, int fact)
    {
        Expression meaning = facts.Facts[fact];
        if (meaning.Kind == ExpressionKind.Variable)
        {
            return [Literal.Of(fact), Literal.Of(fact, true)];
        }

        if (meaning.Kind == ExpressionKind.Equal)
        {
            return [Literal.Of(fact)];
        }

        bool zero = meaning.Kind == ExpressionKind.LessOrEqual && meaning.Operands[1].IsConstant && meaning.Operands[1].Value == 0
            && facts.Support(fact).Count == 1 && system.States[facts.Support(fact).First()].Variable.Range.Minimum == 0;
        return zero ? [Literal.Of(fact, true)] : [];
    }

    /// <summary>Drops what a scan from a state that keeps all guesses left can break, until nothing is.</summary>
    private List<Cube> Sift(List<Cube> guesses)
    {
        Solver solver = _circuit.Solver;
        List<(Cube Cube, Literal Assumed, Literal Broken)> left = [];
        foreach (Cube cube in guesses)
        {
            Literal selector = solver.NewDependent();
            solver.AddClause([!selector, .. cube.Literals.Select(literal => !In(_before, literal))]);
            left.Add((cube, selector, _circuit.And(cube.Literals.Select(literal => In(_after, literal)))));
        }

        while (left.Count > 0)
        {
            Literal guard = solver.NewDependent();
            solver.AddClause([!guard, .. left.Select(guess => guess.Broken)]);
            if (!solver.Solve([_assumed, .. left.Select(guess => guess.Assumed), guard]))
            {
                break;
            }

            left.RemoveAll(guess => solver.ModelValue(guess.Broken));
            solver.Retire(guard);
        }

        return [.. left.Select(guess => guess.Cube)];
    }

    private Literal In(Encoding scan, Literal fact) => scan.Boolean(_facts.Facts[fact.Variable]).NegatedIf(fact.IsNegated);
}
