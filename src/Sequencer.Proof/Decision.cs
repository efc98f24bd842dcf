using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Bounded;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.DecisionDiagrams;
using Sequencer.Proof.Exploring;
using Sequencer.Proof.Leads;
using Sequencer.Proof.Reaching;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;
using Sequencer.Proof.Strengthening;

namespace Sequencer.Proof;

/// <summary>One requirement's way through the engines, cheap ones first.</summary>
internal sealed class Decision
{
    private const string Ranges = "ranges";
    private const string GuessesEngine = "guesses";
    private const string BoundedEngine = "bounded search";
    private const string PursuitEngine = "pursuit";
    private const string ExploringEngine = "exploration";
    private const string StrengtheningEngine = "strengthening";
    private const string LearningEngine = "clause learning";
    private const string QueueEngine = "places in a queue";
    private const string DiagramEngine = "decision diagrams";

    private const int FewestQueriesBeforeHelp = 400;
    private const int QueriesOfFactBeforeHelp = 8;
    private const int MostPlaces = 100;
    private const int MostConflictsOfUnrolling = 10_000;
    private const int MostConflictsOfCheck = 50_000;

    private readonly TransitionSystem _whole;
    private readonly Requirement _wholeRequirement;
    private readonly ProofOptions _options;
    private readonly Budget _budget;
    private readonly IProgress<ProofProgress>? _progress;
    private readonly IReadOnlyList<Trace> _ways;
    private int _depth;
    private int _refinements;
    private bool _unrolled;

    public Decision(
        TransitionSystem whole,
        Requirement requirement,
        Slice slice,
        ProofOptions options,
        IReadOnlyList<Trace> ways,
        Budget budget,
        IProgress<ProofProgress>? progress)
    {
        _whole = whole;
        _wholeRequirement = requirement;
        Slice = slice;
        _options = options;
        _budget = budget;
        _progress = progress;
        _ways = ways;
    }

    public Slice Slice { get; }

    public Effort Effort() => new(
        _budget.Queries, _budget.Conflicts, _budget.Decisions, _budget.Propagations, Slice.System.States.Length, _depth, _refinements);

    public Verdict Run()
    {
        Report(Ranges, 0);
        if (Uses(Engines.Ranges) && InvariantCheck.Confirm(Slice.System, Slice.Builder.True, _budget) is { } leanedOn)
        {
            return Holds(Slice.Builder.True, Ranges, leanedOn);
        }

        if (Uses(Engines.Guesses) && FromGuesses() is { } guessed)
        {
            return guessed;
        }

        if (_ways.Count > 0 && Pursue() is { } pursued)
        {
            return pursued;
        }

        if (Uses(Engines.Bounded) && Unroll(Uses(Engines.Learning) ? _budget.Part(MostConflictsOfUnrolling) : _budget) is { } failing)
        {
            return failing;
        }

        return Uses(Engines.Learning) ? Learn()
            : SearchRings(out string words) ?? Undecided(UndecidedReason.Budget, $"Decision diagrams gave no answer: {words}.");
    }

    private bool Uses(Engines engine) => (_options.Engines & engine) != 0;

    /// <summary>A few scans from the initial state. Where counting makes even these hard other engines get their turn first.</summary>
    private Verdict? Unroll(Budget budget)
    {
        try
        {
            Trace? shortest = BoundedSearch.Find(Slice.System, _options.BoundedDepth, budget, depth => Report(BoundedEngine, depth));
            _unrolled = true;
            return shortest is null ? null : Fails(shortest, BoundedEngine, true);
        }
        catch (BudgetSpentException) when (budget != _budget)
        {
            return null;
        }
    }

    /// <summary>The guesses that come with the requirement, as far as they hold together, may be all it takes.</summary>
    private Holds? FromGuesses()
    {
        if (Slice.Requirement.Guesses.IsEmpty)
        {
            return null;
        }

        Report(GuessesEngine, 0);
        Expression kept = Slice.Builder.And(InvariantSelection.Largest(Slice.System, Slice.Requirement.Guesses, _budget));
        return InvariantCheck.Confirm(Slice.System, kept, _budget) is { } leanedOn ? Holds(kept, GuessesEngine, leanedOn) : null;
    }

    /// <summary>
    /// Clause learning alone for a while; then decision diagrams, which give up soon where they do not fit; then real
    /// runs, and invariants guessed from what they reached, to help clause learning on.
    /// </summary>
    private Verdict Learn()
    {
        FactTable facts = FactHarvest.Collect(Slice.System, Slice.Builder);
        ClauseLearner learner = new(Slice.System, facts, _budget, frame => Report(LearningEngine, frame));
        return Learn(learner, facts, _budget.Queries + Math.Max(FewestQueriesBeforeHelp, QueriesOfFactBeforeHelp * facts.Count))
            ?? FromQueuePlaces(learner)
            ?? (_unrolled || !Uses(Engines.Bounded) ? null : Unroll(_budget))
            ?? SearchRings(out string _)
            ?? Explore(learner, facts)
            ?? Learn(learner, facts, long.MaxValue)
            ?? throw new System.Diagnostics.UnreachableException("clause learning paused without a limit");
    }

    /// <summary>Where counts are places in a queue, that may be all it takes; if not, clause learning goes on with it.</summary>
    private Holds? FromQueuePlaces(ClauseLearner learner)
    {
        Report(QueueEngine, 0);
        ImmutableArray<Expression> facts = QueuePlaces.Find(Slice.System, Slice.Builder, _options.Seed, _budget);
        if (facts.IsEmpty)
        {
            return null;
        }

        Expression kept = Slice.Builder.And(facts);
        if (InvariantCheck.Confirm(Slice.System, kept, _budget) is { } leanedOn)
        {
            return Holds(kept, QueueEngine, leanedOn);
        }

        learner.AddFacts(facts);
        return null;
    }

    private Verdict? SearchRings(out string words)
    {
        words = "they were not to be used";
        if (!Uses(Engines.Diagrams))
        {
            return null;
        }

        foreach (bool whole in (bool[])[true, false])
        {
            DiagramBudget budget = new(_options, _budget);
            switch (RingSearch.Run(Slice.System, Slice.Builder, budget, whole, ring => Report(DiagramEngine, ring)))
            {
                case RingOutcome.Failing failing:
                    return Fails(failing.Trace, DiagramEngine, true);
                case RingOutcome.Reached reached when HoldsWithin(reached.Invariant) is { } verdict:
                    return verdict;
                case RingOutcome.Reached:
                    words = "the check of their invariant took too many conflicts";
                    break;
                case RingOutcome.Limited limited:
                    words = limited.Words;
                    break;
                case var other:
                    throw new System.Diagnostics.UnreachableException($"no verdict for {other}");
            }
        }

        return null;
    }

    /// <summary>An invariant with much counting in it can be too hard to check; then other engines get their turn.</summary>
    private Verdict? HoldsWithin(Expression invariant)
    {
        try
        {
            return InvariantCheck.Confirm(Slice.System, invariant, _budget.Part(MostConflictsOfCheck)) is { } leanedOn
                ? Holds(invariant, DiagramEngine, leanedOn)
                : Undecided(UndecidedReason.InvariantRefused, $"The invariant found by {DiagramEngine} did not pass the check.");
        }
        catch (BudgetSpentException)
        {
            return null;
        }
    }

    private Verdict? Explore(ClauseLearner learner, FactTable facts)
    {
        if (_ways.Count == 0 && Pursue() is { } pursued)
        {
            return pursued;
        }

        Report(ExploringEngine, 0);
        Exploration exploration = new(Slice.System, Slice.Builder, facts, learner.Queries, _options.Seed);
        if (exploration.Run(MostPlaces) is { } found)
        {
            return Fails(found, ExploringEngine, false);
        }

        Report(StrengtheningEngine, 0);
        IReadOnlyList<Cube> pairs = PairInvariants.Find(Slice.System, facts, exploration.Reached, _budget);
        IReadOnlyList<Cube> bounds = DifferenceBounds.Find(Slice.System, Slice.Builder, facts, pairs, _budget);
        learner.AddLemmas([.. pairs, .. bounds]);
        return null;
    }

    private Verdict? Pursue()
    {
        Report(PursuitEngine, 0);
        return FailurePursuit.Find(_whole, _wholeRequirement, Slice, _ways, _budget, reached => Report(PursuitEngine, reached)) is { } pursued ? Fails(pursued, PursuitEngine, false) : null;
    }

    private Verdict? Learn(ClauseLearner learner, FactTable facts, long untilQueries)
    {
        while (true)
        {
            if (learner.Run(untilQueries, out Obligation? lead) is { } cubes)
            {
                return Holds(Slice.Builder.And(cubes.Select(cube => Slice.Builder.Not(facts.Meaning(cube)))), LearningEngine);
            }

            if (lead is null)
            {
                return null;
            }

            if (Follow(learner, facts, lead) is { } verdict)
            {
                return verdict;
            }
        }
    }

    /// <summary>Makes a lead a verdict, or else refines the abstraction so that it is none any more.</summary>
    private Verdict? Follow(ClauseLearner learner, FactTable facts, Obligation lead)
    {
        LeadFollower follower = new(Slice.System, Slice.Builder, facts, learner.Queries);
        if (follower.Follow(lead, out Stuck? stuck) is { } trace)
        {
            return Fails(trace, LearningEngine, learner.Excludes(trace.Scans - 1));
        }

        if (stuck is null)
        {
            return Undecided(UndecidedReason.TraceRefused, "A lead was followed to its end and did not fail there.");
        }

        if (_refinements == _options.Refinements)
        {
            return Undecided(UndecidedReason.Budget, $"After {_refinements} refinements of the abstraction neither an invariant nor a failing run was found.");
        }

        _refinements++;
        if (FactRefiner.Refine(Slice.System, Slice.Builder, facts, stuck) == 0)
        {
            return Undecided(UndecidedReason.Budget, "An abstract way to a failure could neither be followed nor be told from a real one.");
        }

        learner.LearnFacts();
        return null;
    }

    private Verdict Holds(Expression invariant, string engine)
    {
        ImmutableArray<Assumption>? leanedOn = InvariantCheck.Confirm(Slice.System, invariant, _budget);
        return leanedOn is null
            ? Undecided(UndecidedReason.InvariantRefused, $"The invariant found by {engine} did not pass the check.")
            : Holds(invariant, engine, leanedOn.Value);
    }

    private Holds Holds(Expression invariant, string engine, ImmutableArray<Assumption> leanedOn) =>
        new(_wholeRequirement.Name, Slice.Widen(invariant), engine, [.. leanedOn.Select(assumption => assumption.Name)], Effort());

    /// <summary>A trace counts only if it replays on the whole system, first failing in its last scan.</summary>
    private Verdict Fails(Trace trace, string engine, bool isShortest)
    {
        Trace shown = engine is BoundedEngine or DiagramEngine ? trace : TraceShortener.Shorten(Slice.System, Slice.Builder, trace, isShortest, _budget.ThrowIfCancelled);
        Trace wide = Slice.Widen(shown);
        Expression[] kept = [.. _whole.Assumptions.Select(assumption => assumption.Holds)];
        return TraceReplay.FailsInLastScan(_whole, wide, _wholeRequirement.Holds, kept, _budget)
            ? new Fails(_wholeRequirement.Name, wide, engine, isShortest, Effort())
            : Undecided(UndecidedReason.TraceRefused, $"The failing run found by {engine} did not replay on the whole system.");
    }

    private Undecided Undecided(UndecidedReason reason, string words) => new(_wholeRequirement.Name, reason, words, Effort());

    private void Report(string engine, int depth)
    {
        _depth = depth;
        _progress?.Report(new ProofProgress(_wholeRequirement.Name, engine, depth));
        _budget.ThrowIfCancelled();
    }
}
