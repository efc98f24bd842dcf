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
        Budget budget = new(options.Conflicts, cancellation);
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
