using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>
/// Inductive clause learning (Bradley, "SAT-based model checking without unrolling", VMCAI 2011) over
/// facts instead of bits (Cimatti, Griggio, Mover and Tonetta, "IC3 modulo theories via implicit
/// predicate abstraction", TACAS 2014): each scan is exact, but between two scans only the truth of the
/// facts is remembered. An invariant is therefore one of the system; a way to a failure may need facts
/// that are not in the table yet, and is only a lead.
/// </summary>
internal sealed class ClauseLearner
{
    private const int VariablesBeforeRebuild = 20_000;

    private readonly TransitionSystem _system;
    private readonly FactTable _facts;
    private readonly Budget _budget;
    private readonly Action<int> _reportFrame;
    private readonly ImmutableArray<long> _initialStates;
    private readonly List<Cube> _lemmas = [];
    private bool[] _initialFacts;
    private int _freshVariables;
    private long _untilQueries;

    public ClauseLearner(TransitionSystem system, FactTable facts, Budget budget, Action<int> reportFrame)
    {
        _system = system;
        _facts = facts;
        _budget = budget;
        _reportFrame = reportFrame;
        _initialStates = SearchRun.InitialStates(system);
        _initialFacts = facts.Values(_initialStates.AsSpan());
        Queries = new StepQueries(system, facts, budget);
        _freshVariables = Queries.Solver.VariableCount;
    }

    public StepQueries Queries { get; private set; }

    public FrameSequence Frames { get; } = new();

    private bool MustPause => _budget.Queries >= _untilQueries;

    /// <summary>Whether it is known that no run of so many scans, or fewer, fails: no failure follows from a frame before the last.</summary>
    public bool Excludes(long scans) => scans == 0 || (Frames.Last > 1 && scans <= Frames.Last);

    /// <summary>Makes use of facts that were added to the table.</summary>
    public void LearnFacts()
    {
        Queries.LearnFacts();
        _initialFacts = _facts.Values(_initialStates.AsSpan());
    }

    /// <summary>Makes use of cubes that no reachable state is in, which are inductive by themselves.</summary>
    public void AddLemmas(IReadOnlyList<Cube> lemmas)
    {
        LearnFacts();
        foreach (Cube lemma in lemmas)
        {
            _lemmas.Add(lemma);
            Queries.AddLemma(lemma);
        }
    }

    /// <summary>Makes use of facts that hold in every run and are inductive together.</summary>
    public void AddFacts(IEnumerable<Expression> facts) => AddLemmas([.. facts.Select(fact => new Cube([!_facts.LiteralOf(fact)]))]);

    /// <summary>
    /// Goes on until an invariant is found (its blocked cubes are returned) or an abstract way from the
    /// initial state to a failure (<paramref name="lead"/>), or, with neither, until so many queries were put.
    /// </summary>
    public IReadOnlyList<Cube>? Run(long untilQueries, out Obligation? lead)
    {
        _untilQueries = untilQueries;
        while (true)
        {
            _reportFrame(Frames.Last);
            lead = BlockFailures();
            if (lead is not null || MustPause)
            {
                return null;
            }

            Frames.Extend();
            if (Frames.Push(Queries) is { } invariant)
            {
                return [.. _lemmas, .. invariant];
            }

            RebuildWhenWorn();
        }
    }

    private Obligation? BlockFailures()
    {
        while (!MustPause && Queries.CanFail(Frames.Last))
        {
            Obligation failure = Lift(null);
            if (Block(failure) is { } lead)
            {
                return lead;
            }
        }

        return null;
    }

    /// <summary>The state and inputs of the solver's model, made into an obligation.</summary>
    private Obligation Lift(Obligation? next)
    {
        ImmutableArray<long> states = Queries.ModelStates();
        ImmutableArray<long> inputs = Queries.ModelInputs();
        (Cube cube, IReadOnlySet<int> exact) = Queries.Lift(states, inputs, next?.Cube);
        return new Obligation(cube, states, inputs, exact, next);
    }

    private Obligation? Block(Obligation failure)
    {
        PriorityQueue<(Obligation Obligation, int Frame), (int Frame, long Order)> open = new();
        long order = 0;
        open.Enqueue((failure, Frames.Last), (Frames.Last, order));
        while (!MustPause && open.TryDequeue(out (Obligation Obligation, int Frame) task, out _))
        {
            (Obligation obligation, int frame) = task;
            if (frame == 0 || FactTable.Satisfies(_initialFacts, obligation.Cube))
            {
                return obligation;
            }

            if (Frames.Blocks(obligation.Cube, frame))
            {
                continue;
            }

            if (Queries.CanEnter(obligation.Cube, frame - 1, out Literal[] enough))
            {
                open.Enqueue((Lift(obligation), frame - 1), (frame - 1, --order));
                open.Enqueue(task, (frame, --order));
                continue;
            }

            int reached = Learn(obligation.Cube, enough, frame);
            if (reached < Frames.Last)
            {
                open.Enqueue((obligation, reached + 1), (reached + 1, --order));
            }
        }

        return null;
    }

    /// <summary>Generalises the blocked cube, blocks it as far up as possible, and answers how far.</summary>
    private int Learn(Cube cube, Literal[] enough, int frame)
    {
        Cube general = Generalise(ExcludingInitial(enough, cube), frame);
        while (frame < Frames.Last && !Queries.CanEnter(general, frame, out Literal[] fewer))
        {
            general = ExcludingInitial(fewer, general);
            frame++;
        }

        Frames.Add(general, frame, Queries);
        return frame;
    }

    /// <summary>Leaves out one literal after another for as long as the cube cannot be entered.</summary>
    private Cube Generalise(Cube cube, int frame)
    {
        HashSet<Literal> needed = [];
        while (cube.Literals.FirstOrDefault(literal => !needed.Contains(literal), new Literal(-1)) is { Code: >= 0 } literal)
        {
            Cube smaller = new(cube.Literals.Where(other => other != literal));
            bool excludesInitial = smaller.Literals.Length > 0 && !FactTable.Satisfies(_initialFacts, smaller);
            if (excludesInitial && !Queries.CanEnter(smaller, frame - 1, out Literal[] enough))
            {
                cube = ExcludingInitial(enough, smaller);
            }
            else
            {
                needed.Add(literal);
            }
        }

        return cube;
    }

    /// <summary>The literals, and one of the cube that is false initially if none of them is.</summary>
    private Cube ExcludingInitial(Literal[] literals, Cube cube) =>
        Array.Exists(literals, literal => !FactTable.Satisfies(_initialFacts, literal))
            ? new Cube(literals)
            : new Cube([.. literals, Array.Find(cube.Literals, literal => !FactTable.Satisfies(_initialFacts, literal))]);

    /// <summary>Retired guards slow a solver down: now and then a new one takes over the clauses.</summary>
    private void RebuildWhenWorn()
    {
        if (Queries.Solver.VariableCount - _freshVariables < VariablesBeforeRebuild)
        {
            return;
        }

        Queries = new StepQueries(_system, _facts, _budget);
        _freshVariables = Queries.Solver.VariableCount;
        _lemmas.ForEach(Queries.AddLemma);
        foreach ((Cube cube, int frame) in Frames.All)
        {
            Queries.AddBlocked(cube, frame);
        }
    }
}
