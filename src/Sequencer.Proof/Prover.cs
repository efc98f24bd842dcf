using System.Collections.Concurrent;
using System.Collections.Immutable;
using Sequencer.Control.Traces;
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
        return Decide(system, requirement, options, [], progress, cancellation);
    }

    /// <param name="system">The system.</param>
    /// <param name="requirement">What is to be decided.</param>
    /// <param name="options">The budget.</param>
    /// <param name="ways">Runs to the system's goals, so that they need not be looked for; none where they are not known.</param>
    /// <param name="progress">Told of the engines.</param>
    /// <param name="cancellation">Makes the verdict <see cref="Proof.Undecided"/>.</param>
    private static Verdict Decide(
        TransitionSystem system,
        Requirement requirement,
        ProofOptions options,
        IReadOnlyList<Trace> ways,
        IProgress<ProofProgress>? progress,
        CancellationToken cancellation)
    {
        Budget budget = new(options.Conflicts, cancellation) { MostPropagations = options.Propagations };
        Decision? decision = null;
        return Guarded(requirement.Name, () => decision?.Effort() ?? new Effort(0, 0, 0, 0, 0, 0, 0), () =>
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
        });

        Decision Begin(AssumptionScope scope) =>
            new(system, requirement, Slicer.Cut(system, requirement, scope), options, ways, budget, progress);
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

    /// <summary>
    /// Decides the only requirement of a system, first from guessed facts about its states: the largest inductive set of them is selected and checked
    /// like every invariant. The guesses need not be true; nothing is believed of them. Where they are not enough, whether some run breaks
    /// those by which states are given by others: if none does, what shows it is added to the guesses; a run that does and breaks the requirement with
    /// it is a failing run.
    /// </summary>
    /// <param name="system">A system with one requirement and no assumptions. Its goals lead the search.</param>
    /// <param name="guesses">Booleans over the system's states, made by <paramref name="builder"/>.</param>
    /// <param name="builder">The builder of the system's expressions.</param>
    /// <param name="alike">Says of a scan that it breaks no such guess and not the requirement; null where nothing short is known.</param>
    /// <param name="ways">Runs of the system to its goals; none where they are not known. Asked for where the guesses are not enough.</param>
    /// <param name="options">The budget of each of the two parts; that in propagations is the second's.</param>
    /// <param name="cancellation">Makes the verdict <see cref="Proof.Undecided"/>.</param>
    public static Verdict DecideFrom(
        TransitionSystem system,
        IReadOnlyList<Expression> guesses,
        ExpressionBuilder builder,
        Func<AlikeScan?> alike,
        Func<IReadOnlyList<Trace>> ways,
        ProofOptions options,
        CancellationToken cancellation)
    {
        Budget budget = new(options.Conflicts, cancellation);
        string requirement = system.Requirements.Single().Name;
        return Guarded(requirement, Spent, () =>
        {
            (ImmutableArray<Expression>? facts, FactsGap? gap) = FactByFact.Invariant(system, guesses, budget);
            if (facts is { } found)
            {
                return Shown(found);
            }

            FirstBreak smaller = new(system, gap!, alike(), builder);
            IReadOnlyList<Trace> known = ways();
            Verdict verdict = Decide(smaller.System, smaller.Requirement, options, known, null, cancellation) switch
            {
                Holds holds when FactByFact.Invariant(system, [.. gap!.Facts, .. smaller.InWhole(holds.Invariant)], budget).Found is { } more => Shown(more),
                Holds => new Undecided(requirement, UndecidedReason.FactsInsufficient, "What was found of the states does not help the guesses.", Spent()),
                Fails fails => Seen(fails) ?? Decide(system, system.Requirements[0], options, [fails.Trace, .. known], null, cancellation),
                Verdict other => other,
            };
            return verdict is Undecided undecided ? undecided with { NotKept = gap!.Broken } : verdict;
        });

        Verdict Shown(ImmutableArray<Expression> facts) => new Holds(requirement, builder.And(facts), "given facts", [], Spent());

        Effort Spent() => new(budget.Queries, budget.Conflicts, budget.Decisions, budget.Propagations, system.States.Length, 0, 0);

        Fails? Seen(Fails fails)
        {
            // What a scan breaks of the states is seen in the scan after it, if it is of those that the requirement speaks of.
            Trace longer = new([.. fails.Trace.Segments, fails.Trace.Segments[^1] with { Scans = 1 }]);
            return TracePlayback.FirstScanWhereFalse(longer, system, system.Requirements[0].Holds) is { } scan ? fails with { Trace = longer.First(scan + 1), IsShortest = false } : null;
        }
    }

    private static Verdict Guarded(string requirement, Func<Effort> spent, Func<Verdict> decide)
    {
        try
        {
            return decide();
        }
        catch (OperationCanceledException)
        {
            return new Undecided(requirement, UndecidedReason.Cancelled, "The proof was cancelled before it was finished.", spent());
        }
        catch (BudgetSpentException)
        {
            return new Undecided(requirement, UndecidedReason.Budget, "The budget of the solver was spent before an answer was found.", spent());
        }
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
