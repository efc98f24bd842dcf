using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Remembering;

/// <summary>
/// Invariants that were kept, checked on the present system one after another in a single encoding: most of what their scans
/// read they have in common. Each is taken for granted in its own questions only. Settled states are put in. For one thread.
/// </summary>
internal sealed class Recollection
{
    private const long ConflictsOfBefore = 5_000;

    private readonly TransitionSystem _system;
    private readonly CancellationToken _cancellation;
    private Solver _solver;
    private Scan _scan;
    private Literal[] _assumed;

    public Recollection(TransitionSystem system, CancellationToken cancellation)
    {
        _system = system;
        _cancellation = cancellation;
        Renew();
    }

    /// <summary>The requirement by the invariant in the text; null where that does not pass the three obligations.</summary>
    public Holds? Recall(Requirement requirement, string text, long conflicts) =>
        Within(conflicts, text, (invariant, budget) => Confirm(requirement, Facts(invariant), "found before", budget));

    /// <summary>The requirement by so much of an invariant as is still one after the program was edited.</summary>
    public Holds? FromBefore(Requirement requirement, string text) =>
        Within(ConflictsOfBefore, text, (invariant, budget) =>
        {
            IEnumerable<InductiveFact> initially = Facts(invariant).Where(fact => InvariantCheck.HoldsInitially(_system, fact.Meaning));
            return Confirm(requirement, InvariantSelection.Kept(_solver, _assumed, initially), "found before the edit", budget);
        });

    private Holds? Confirm(Requirement requirement, IReadOnlyList<InductiveFact> facts, string engine, Budget budget)
    {
        ExpressionBuilder build = new();
        IReadOnlyList<Expression> own = build.Substitute([.. facts.Select(fact => fact.Meaning)], new Dictionary<Variable, Expression>());
        Expression invariant = build.And([.. own, .. Slicer.Settled(_system, requirement).Select(state => state.Fact(build))]);
        if (!InvariantCheck.HoldsInitially(_system, invariant))
        {
            return null;
        }

        Literal[] kept = [_scan.Encoding.Boolean(Put(requirement.Holds)), .. facts.Select(fact => fact.After)];
        return InvariantCheck.Needed(_solver, [.. facts.Select(fact => fact.Before)], kept, _assumed) is { } needed
            ? new Holds(requirement.Name, invariant, engine, [.. _system.Assumptions.Where((_, index) => needed.Contains(_assumed[index])).Select(assumption => assumption.Name)], Spent(budget))
            : null;
    }

    /// <summary>With a budget of its own for each invariant. One that is spent may leave the solver in the middle of something.</summary>
    private Holds? Within(long conflicts, string text, Func<Expression, Budget, Holds?> attempt)
    {
        if (InvariantText.Read(_system, text) is not { } invariant)
        {
            return null;
        }

        Budget budget = new(conflicts, _cancellation);
        _solver.Budget = budget;
        try
        {
            return attempt(invariant, budget);
        }
        catch (Exception stopped) when (stopped is OperationCanceledException or BudgetSpentException)
        {
            Renew();
            return null;
        }
    }

    /// <summary>What the invariant says, each by itself. Its expressions are of a builder of their own.</summary>
    private ImmutableArray<InductiveFact> Facts(Expression invariant)
    {
        Encoding before = new(_scan.Circuit, variable => _scan.States[variable.Index]);
        Encoding after = _scan.EncodingAfter();
        return [.. InvariantCheck.Conjuncts(Put(invariant)).Select(fact => new InductiveFact(fact, before.Boolean(fact), after.Boolean(fact)))];
    }

    private Expression Put(Expression expression) => _system.Settled.Put(expression)[0];

    private Effort Spent(Budget budget) => new(budget.Queries, budget.Conflicts, budget.Decisions, budget.Propagations, _system.States.Length, 0, 0);

    [MemberNotNull(nameof(_solver), nameof(_scan), nameof(_assumed))]
    private void Renew()
    {
        _solver = new Solver(new Budget(0, _cancellation));
        _scan = Scan.FromAnywhere(new Circuit(_solver), _system.Settled.Rest);
        _assumed = [.. _system.Settled.Rest.Assumptions.Select(assumption => _scan.Encoding.Boolean(assumption.Holds))];
    }
}
