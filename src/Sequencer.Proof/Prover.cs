using System.Collections.Concurrent;
using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Remembering;
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
            return Undecided(UndecidedReason.Budget, "The budget of the solver was spent before an answer was found.");
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
        Slicer.Fingerprint(system, requirement);

    /// <summary>As <see cref="Decide(TransitionSystem, Requirement, ProofOptions, IProgress{ProofProgress}?, CancellationToken)"/>, but first tries what was found before, and keeps what is found.</summary>
    public static Verdict Decide(
        TransitionSystem system,
        Requirement requirement,
        ProofOptions options,
        IProofMemory? memory,
        IProgress<ProofProgress>? progress,
        CancellationToken cancellation)
    {
        return memory is null
            ? Decide(system, requirement, options, progress, cancellation)
            : Decide(system, requirement, options, memory, new Recollection(system, cancellation), progress, cancellation);
    }

    private static Verdict Decide(
        TransitionSystem system,
        Requirement requirement,
        ProofOptions options,
        IProofMemory memory,
        Recollection recollection,
        IProgress<ProofProgress>? progress,
        CancellationToken cancellation)
    {
        string fingerprint = Slicer.Fingerprint(system, requirement);
        string name = InvariantText.Key(system, requirement);
        string? last = memory.Find(name);
        if (memory.Find(fingerprint) is { } text && recollection.Recall(requirement, text, options.Conflicts) is { } recalled)
        {
            if (text != last)
            {
                memory.Keep(name, text);
            }

            return recalled;
        }

        Verdict verdict = (last is null ? null : recollection.FromBefore(requirement, last)) ?? Decide(system, requirement, options, progress, cancellation);
        if (verdict is Holds holds && InvariantText.Write(holds.Invariant) is { } found)
        {
            memory.Keep(fingerprint, found);
            memory.Keep(name, found);
        }

        return verdict;
    }

    private static Effort Spent(Budget budget, TransitionSystem system) =>
        new(budget.Queries, budget.Conflicts, budget.Decisions, budget.Propagations, system.States.Length, 0, 0);

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
            (ImmutableArray<Expression>? facts, ImmutableArray<Expression> lost) = FactByFact.Invariant(system, guesses, budget);
            return facts is { } found
                ? new Holds(requirement, builder.And(found), "given facts", [], Spent(budget, system))
                : Undecided(UndecidedReason.FactsInsufficient, "The facts that hold together do not imply the requirement.") with { NotKept = lost };
        }
        catch (OperationCanceledException)
        {
            return Undecided(UndecidedReason.Cancelled, "The proof was cancelled before it was finished.");
        }
        catch (BudgetSpentException)
        {
            return Undecided(UndecidedReason.Budget, "The budget of the solver was spent before an answer was found.");
        }

        Undecided Undecided(UndecidedReason reason, string words) => new(requirement, reason, words, Spent(budget, system));
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
        CancellationToken cancellation) =>
        DecideAll(system, system.Requirements, options, degree, null, progress, cancellation);

    /// <summary>Some of them, with what was found before. Cancelled, those that are finished keep their verdicts.</summary>
    public static ImmutableArray<Verdict> DecideAll(
        TransitionSystem system,
        ImmutableArray<Requirement> requirements,
        ProofOptions options,
        int degree,
        IProofMemory? memory,
        IProgress<ProofProgress>? progress,
        CancellationToken cancellation)
    {
        Verdict[] verdicts = new Verdict[requirements.Length];
        ParallelOptions parallel = new() { MaxDegreeOfParallelism = degree };
        ConcurrentBag<Recollection> recollections = [];
        Parallel.For(0, verdicts.Length, parallel, index =>
        {
            if (memory is null)
            {
                verdicts[index] = Decide(system, requirements[index], options, progress, cancellation);
                return;
            }

            Recollection recollection = recollections.TryTake(out Recollection? free) ? free : new Recollection(system, cancellation);
            verdicts[index] = Decide(system, requirements[index], options, memory, recollection, progress, cancellation);
            recollections.Add(recollection);
        });
        return [.. verdicts];
    }
}
