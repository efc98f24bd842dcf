using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof;

/// <summary>Decides requirements of transition systems.</summary>
public static class Prover
{
    /// <summary>
    /// Decides whether the requirement holds in every scan of every run that keeps the assumptions.
    /// Cancelling (by hand or after a time) makes the verdict <see cref="Undecided"/>; nothing is thrown for it.
    /// </summary>
    public static Verdict Decide(
        TransitionSystem system,
        Requirement requirement,
        ProofOptions options,
        IProgress<ProofProgress>? progress,
        CancellationToken cancellation)
    {
        Budget budget = new(options.Conflicts, cancellation) { MostPropagations = options.Propagations };
        Decision? decision = null;
        try
        {
            decision = Begin(AssumptionScope.Related);
            Verdict verdict = decision.Run();
            if (verdict is Undecided { Reason: UndecidedReason.TraceRefused } && decision.Slice.LacksAssumptions)
            {
                // The assumptions left out may be broken by the inputs left out: now all of them count.
                decision = Begin(AssumptionScope.All);
                verdict = decision.Run();
            }

            return verdict;
        }
        catch (OperationCanceledException)
        {
            return Undecided(UndecidedReason.Cancelled, "The proof was cancelled before it was finished.");
        }
        catch (BudgetSpentException)
        {
            return Undecided(UndecidedReason.Budget, "The budget of solver conflicts was spent before an answer was found.");
        }

        Decision Begin(AssumptionScope scope) =>
            new(system, requirement, Slicer.Cut(system, requirement, scope), options, budget, progress);

        Undecided Undecided(UndecidedReason reason, string words) =>
            new(requirement.Name, reason, words, decision?.Effort() ?? new Effort(0, 0, 0, 0, 0, 0, 0));
    }

    /// <summary>
    /// The fingerprint of all that a requirement can depend on. Where it holds in one system it holds in every other of the
    /// same fingerprint, whatever else differs: nothing need be proved again.
    /// </summary>
    public static string Fingerprint(TransitionSystem system, Requirement requirement) =>
        MeaningHash.Of(Slicer.Cut(system, requirement, AssumptionScope.All).System);

    /// <summary>
    /// Tries to prove the only requirement of a system from guessed facts about its states: the largest inductive
    /// set of them is selected and checked like every invariant. The guesses need not be true; nothing is believed of them.
    /// </summary>
    /// <param name="system">A system with one requirement and no assumptions.</param>
    /// <param name="guesses">Booleans over the system's states, made by <paramref name="builder"/>.</param>
    /// <param name="builder">The builder of the system's expressions.</param>
    /// <param name="options">The budget.</param>
    /// <param name="cancellation">Makes the verdict <see cref="Proof.Undecided"/>.</param>
    /// <returns><see cref="Holds"/>, or <see cref="Proof.Undecided"/>: the guesses are not enough, or the budget was spent.</returns>
    public static Verdict ProveFrom(
        TransitionSystem system,
        IReadOnlyList<Expression> guesses,
        ExpressionBuilder builder,
        ProofOptions options,
        CancellationToken cancellation)
    {
        Budget budget = new(options.Conflicts, cancellation);
        string requirement = system.Requirements.Single().Name;
        try
        {
            Expression invariant = builder.And(InvariantSelection.Largest(system, guesses, budget));
            return InvariantCheck.Confirm(system, invariant, budget) is { } leanedOn
                ? new Holds(requirement, invariant, "given facts", [.. leanedOn.Select(assumption => assumption.Name)], Spent())
                : Undecided(UndecidedReason.FactsInsufficient, "The facts that hold together do not imply the requirement.");
        }
        catch (OperationCanceledException)
        {
            return Undecided(UndecidedReason.Cancelled, "The proof was cancelled before it was finished.");
        }
        catch (BudgetSpentException)
        {
            return Undecided(UndecidedReason.Budget, "The budget of solver conflicts was spent before an answer was found.");
        }

        Undecided Undecided(UndecidedReason reason, string words) => new(requirement, reason, words, Spent());

        Effort Spent() => new(budget.Queries, budget.Conflicts, budget.Decisions, budget.Propagations, system.States.Length, 0, 0);
    }

    /// <summary>
    /// Decides all requirements of the system, several at a time, each by itself with the full options.
    /// The verdicts are in the requirements' order and do not depend on <paramref name="degree"/>.
    /// </summary>
    public static ImmutableArray<Verdict> DecideAll(
        TransitionSystem system,
        ProofOptions options,
        int degree,
        IProgress<ProofProgress>? progress,
        CancellationToken cancellation)
    {
        Verdict[] verdicts = new Verdict[system.Requirements.Length];
        ParallelOptions parallel = new() { MaxDegreeOfParallelism = degree };
        Parallel.For(0, verdicts.Length, parallel, index =>
            verdicts[index] = Decide(system, system.Requirements[index], options, progress, cancellation));
        return [.. verdicts];
    }
}
