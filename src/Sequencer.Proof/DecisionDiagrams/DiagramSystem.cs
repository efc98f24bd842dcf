using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>One scan of a system in diagrams over the bits of inputs and of states before the scan.</summary>
internal sealed class DiagramSystem
{
    private readonly ImmutableArray<BitVector> _inputs;
    private readonly ImmutableArray<BitVector> _states;

    public DiagramSystem(TransitionSystem system, VariableOrdering ordering, DiagramBudget budget)
    {
        System = system;
        Ordering = ordering;
        Diagrams = new Diagrams(ordering.Levels, budget);
        DiagramGates gates = new(Diagrams, [.. ordering.Inputs, .. ordering.States]);
        _inputs = [.. system.Inputs.Select(input => Encoding.Unknown(gates, input))];
        int inRange = gates.Demanded;
        _states = [.. system.States.Select(state => Encoding.Unknown(gates, state.Variable))];
        Encoding encoding = new(gates, variable => (variable.Role == VariableRole.Input ? _inputs : _states)[variable.Index]);
        Kept = system.Assumptions.Aggregate(inRange, (kept, assumption) => Diagrams.And(kept, encoding.Boolean(assumption.Holds).Code));
        Breaks = encoding.Boolean(system.Requirements[0].Holds).Code ^ 1;
        Functions = [.. system.States.SelectMany(state => Changing(_states[state.Variable.Index], encoding.Vector(state.Next)))];
        Initial = Diagrams.False;
        Initial = Point(SearchRun.InitialStates(system));
    }

    public TransitionSystem System { get; }

    public VariableOrdering Ordering { get; }

    public Diagrams Diagrams { get; }

    /// <summary>Inputs are within their ranges and the assumptions hold.</summary>
    public int Kept { get; }

    /// <summary>The scan breaks the requirement.</summary>
    public int Breaks { get; }

    /// <summary>The initial state alone.</summary>
    public int Initial { get; }

    /// <summary>Each bit of a state that can change: its level before the scan, and its value after it.</summary>
    public ImmutableArray<(int Level, int After)> Functions { get; }

    /// <summary>Every edge that must live as long as the system.</summary>
    public IEnumerable<int> Roots =>
    [
        Kept, Breaks, Initial,
        .. Functions.Select(function => function.After),
        .. _inputs.Concat(_states).SelectMany(vector => vector.Bits).Select(bit => bit.Code),
    ];

    /// <summary>The bits of a state, the lowest first: constant ones are the constant edges.</summary>
    public BitVector Bits(Variable state) => _states[state.Index];

    /// <summary>The set of one state.</summary>
    public int Point(ImmutableArray<long> states) => Fixed(Diagrams.True, _states, states);

    /// <summary>The part of a set in which the input has the value.</summary>
    public int WithInput(int set, int input, long value) => Fixed(set, [_inputs[input]], [value]);

    /// <summary>The part of a set of scans that lead to exactly this state.</summary>
    public int LeadingTo(int set, ImmutableArray<long> states)
    {
        Dictionary<int, bool> wanted = [];
        foreach ((BitVector vector, long value) in _states.Zip(states))
        {
            for (int place = 0; place < vector.Width; place++)
            {
                wanted[Diagrams.LevelOf(vector[place].Code)] = IsSet(vector, value, place);
            }
        }

        foreach ((int level, int after) in Functions)
        {
            set = Diagrams.And(set, wanted[level] ? after : after ^ 1);
        }

        return set;
    }

    /// <summary>A scan of a set that is not empty, unset bits wherever there is a choice.</summary>
    public (ImmutableArray<long> Inputs, ImmutableArray<long> States) Pick(int set)
    {
        HashSet<int> raised = [];
        while (set != Diagrams.True)
        {
            if (Diagrams.Low(set) != Diagrams.False)
            {
                set = Diagrams.Low(set);
            }
            else
            {
                raised.Add(Diagrams.LevelOf(set));
                set = Diagrams.High(set);
            }
        }

        return (Read(System.Inputs, _inputs, raised), Read([.. System.States.Select(state => state.Variable)], _states, raised));
    }

    private static bool IsSet(BitVector vector, long value, int place) =>
        vector.Width == 1 ? value != 0 : ((value >> Math.Min(place, 63)) & 1) != 0;

    private ImmutableArray<long> Read(ImmutableArray<Variable> variables, ImmutableArray<BitVector> vectors, HashSet<int> raised) => [.. variables.Zip(vectors, (variable, vector) =>
    {
        long value = variable.Sort == Sort.Integer && IsRaised(vector[vector.Width - 1]) ? -1 : 0;
        for (int place = vector.Width - (variable.Sort == Sort.Integer ? 2 : 1); place >= 0; place--)
        {
            value = (value << 1) | (IsRaised(vector[place]) ? 1L : 0L);
        }

        return value;

        bool IsRaised(Literal bit) => bit.Code == Diagrams.True || raised.Contains(Diagrams.LevelOf(bit.Code));
    })];

    private int Fixed(int set, ImmutableArray<BitVector> vectors, ImmutableArray<long> values)
    {
        foreach ((BitVector vector, long value) in vectors.Zip(values))
        {
            for (int place = 0; place < vector.Width; place++)
            {
                set = Diagrams.And(set, vector[place].NegatedIf(!IsSet(vector, value, place)).Code);
            }
        }

        return set;
    }

    private IEnumerable<(int Level, int After)> Changing(BitVector before, BitVector after)
    {
        for (int place = 0; place < before.Width; place++)
        {
            if (before[place].Code >> 1 != 0)
            {
                yield return (Diagrams.LevelOf(before[place].Code), after[place].Code);
            }
        }
    }
}
