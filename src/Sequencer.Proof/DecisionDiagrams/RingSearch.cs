using System.Collections.Immutable;
using System.Numerics;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>
/// Visits all reachable states at once: ring k is the set of states that k scans reach and fewer do not. A ring from which a scan
/// can break the requirement gives a shortest failing run; where the rings end, the states reached are an invariant.
/// </summary>
internal sealed class RingSearch
{
    private readonly DiagramSystem _system;
    private readonly Diagrams _diagrams;
    private readonly TransitionRelation _relation;
    private readonly List<int> _rings = [];
    private readonly int _failing;
    private readonly int _inputs;
    private int _reached;

    private RingSearch(TransitionSystem system, DiagramBudget budget, bool whole)
    {
        _system = new DiagramSystem(system, VariableOrdering.Of(system, budget, whole), budget);
        _diagrams = _system.Diagrams;
        _relation = new TransitionRelation(_system);
        _failing = _diagrams.And(_system.Kept, _system.Breaks);
        _inputs = _diagrams.Cube(_system.Ordering.Inputs);
    }

    /// <param name="system">A system with one requirement.</param>
    /// <param name="builder">The builder of its expressions, for the invariant.</param>
    /// <param name="budget">Where it ends the outcome says so.</param>
    /// <param name="whole">Whether the bits of an integer are kept together.</param>
    /// <param name="reportRing">Told each ring's number before it is made.</param>
    public static RingOutcome Run(TransitionSystem system, ExpressionBuilder builder, DiagramBudget budget, bool whole, Action<int> reportRing)
    {
        try
        {
            RingSearch search = new(system, budget, whole);
            return search.FailingRing(budget.Rings, reportRing) is { } ring
                ? new RingOutcome.Failing(search.TraceTo(ring))
                : new RingOutcome.Reached(InvariantExpression.Of(search._system, search._reached, builder), search._rings.Count);
        }
        catch (DiagramLimitException limit)
        {
            return new RingOutcome.Limited(limit.Message);
        }
    }

    /// <summary>How many states of the system's runs there are, the requirement not looked at.</summary>
    /// <exception cref="DiagramLimitException">The budget was spent first.</exception>
    public static BigInteger ReachedStates(TransitionSystem system, DiagramBudget budget)
    {
        RingSearch search = new(system, budget, whole: true);
        search.Spread(budget.Rings, _ => false);
        return search._diagrams.CountOver(search._reached, search._system.Ordering.States);
    }

    private int? FailingRing(int most, Action<int> reportRing) => Spread(most, ring =>
    {
        reportRing(_rings.Count);
        return _diagrams.AndExists(ring, _failing, _inputs) != Diagrams.False;
    });

    /// <summary>Makes ring after ring until one of them is the wanted one; its number, or null if there is none.</summary>
    private int? Spread(int most, Func<int, bool> isWanted)
    {
        int ring = _system.Initial;
        _reached = ring;
        while (ring != Diagrams.False)
        {
            _rings.Add(ring);
            if (isWanted(ring))
            {
                return _rings.Count - 1;
            }

            if (_rings.Count == most)
            {
                throw new DiagramLimitException(FormattableString.Invariant($"after {most} scans there were still new states"));
            }

            // Any set between the ring and all that was reached has the same new states as its image.
            int from = _diagrams.Restrict(ring, _diagrams.Or(ring, _reached ^ 1));
            int image = _relation.Image(from, _rings.Concat([_failing, _inputs, _reached]));
            ring = _diagrams.And(image, _reached ^ 1);
            _reached = _diagrams.Or(_reached, ring);
        }

        return null;
    }

    /// <summary>A run through the rings, with inputs held where the rings allow it.</summary>
    private Trace TraceTo(int last)
    {
        ImmutableArray<long>[] inputs = new ImmutableArray<long>[last + 1];
        ImmutableArray<long> states = [];
        for (int scan = last; scan >= 0; scan--)
        {
            int scans = scan == last
                ? _diagrams.And(_rings[scan], _failing)
                : _system.LeadingTo(_diagrams.And(_rings[scan], _system.Kept), states);
            for (int input = 0; input < _system.System.Inputs.Length; input++)
            {
                int held = _system.WithInput(scans, input, scan == last ? Resting(_system.System.Inputs[input]) : inputs[scan + 1][input]);
                scans = held == Diagrams.False ? scans : held;
            }

            (inputs[scan], states) = _system.Pick(scans);
        }

        List<TraceSegment> segments = [];
        Array.ForEach(inputs, scan => SearchRun.Append(segments, scan, 1));
        return new Trace([.. segments]);
    }

    private static long Resting(Variable input) => Math.Clamp(0, input.Range.Minimum, input.Range.Maximum);
}
