using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>Makes a <see cref="SpecialisedScan"/> from a scan that was just executed whole: its registers hold the values.</summary>
internal sealed class Specialiser
{
    private readonly InstructionList _code;
    private readonly int _inputs;
    private readonly ValueClasses _classes;
    private readonly NeededValues _needed;
    private readonly bool[] _loaded;
    private readonly int[] _placeOf;
    private readonly List<long> _registers = [];
    private readonly List<Instruction> _instructions = [];
    private readonly List<ExpectedOutcome> _expected = [];
    private readonly Dictionary<long, int> _constants = [];

    public Specialiser(InstructionList code, int inputs)
    {
        _code = code;
        _inputs = inputs;
        _classes = new ValueClasses(code);
        _needed = new NeededValues(code, _classes);
        _loaded = new bool[inputs + code.NextStates.Length];
        _placeOf = new int[code.InitialRegisters.Length];
    }

    /// <summary>Takes which inputs, then states, can move from now on.</summary>
    public void Expect(bool[] leafMoves) => _classes.Expect(leafMoves);

    /// <param name="values">All registers after the scan; those of its leaves as before it.</param>
    /// <param name="habits">Which leaves move, and which of them may be counted on to rest where they did in this scan.</param>
    /// <param name="varies">Which instructions' outcomes are not to be counted on.</param>
    public SpecialisedScan Specialise(long[] values, LeafHabits habits, bool[] varies)
    {
        bool[] leafMoves = habits.Moves;
        Clear();
        KnownValues resting = Rest(values, habits, varies);
        for (int state = 0; state < _code.NextStates.Length; state++)
        {
            if (Stays(state, leafMoves))
            {
                // It keeps its value; one that rests must go on to rest.
                if (!_loaded[_inputs + state])
                {
                    _needed.Need(_code.NextStates[state]);
                }

                continue;
            }

            _needed.Need(_code.NextStates[state]);
        }

        Array.ForEach(_code.Outputs, _needed.Need);
        Array.ForEach(_code.Observed, _needed.Need);
        _needed.Follow(values);
        (Move[] fromInputs, Move[] fromStates) = LoadLeaves();
        foreach (int index in _classes.Depending)
        {
            Emit(_code.Instructions[index], index, values);
        }

        ResultList nextStates = NextStates(values, leafMoves, out bool changesSituation, out int[] mayChangeSituation);
        ResultList outputs = Results(_code.Outputs, values);
        ResultList observed = Results(_code.Observed, values);
        InstructionSchedule schedule = new(_instructions, _registers.Count);
        ScanPart whole = new(
            schedule.Ordered, schedule.Runs, fromInputs, fromStates, [], [.. _expected], nextStates.Computed, outputs.Computed, observed.Computed);
        return new SpecialisedScan([.. _registers], whole, nextStates.Known)
        {
            Resting = resting,
            Outputs = outputs.Known,
            Observed = observed.Known,
            ChangesSituation = changesSituation,
            MayChangeSituation = mayChangeSituation,
        };
    }

    private void Clear()
    {
        _needed.Clear();
        _registers.Clear();
        _instructions.Clear();
        _expected.Clear();
        _constants.Clear();
    }

    /// <summary>
    /// Classifies the values with as many leaves at rest as can be: such a state was left as it was by this scan, and will be by all
    /// that are as expected.
    /// </summary>
    private KnownValues Rest(long[] values, LeafHabits habits, bool[] varies)
    {
        habits.Moves.CopyTo(_loaded, 0);
        List<int> rest = [];
        for (int state = 0; state < _code.NextStates.Length; state++)
        {
            int leaf = _inputs + state;
            if (habits.Moves[leaf] && habits.MayRest[leaf] && values[_code.NextStates[state]] == values[leaf])
            {
                _loaded[leaf] = false;
                rest.Add(state);
            }
        }

        _classes.Classify(values, _loaded, varies);
        while (true)
        {
            int[] moved = [.. rest.Where(state => _classes.Moves(_code.NextStates[state])).Select(state => _inputs + state)];
            if (moved.Length == 0)
            {
                break;
            }

            foreach (int leaf in moved)
            {
                _loaded[leaf] = true;
                habits.Missed(leaf);
            }

            rest.RemoveAll(state => _loaded[_inputs + state]);
            _classes.Reclassify(values, moved, varies);
        }

        return new KnownValues([.. rest], [.. rest.Select(state => values[_inputs + state])]);
    }

    /// <summary>A moving state that the scan does not write: it rests, or its next value is its value.</summary>
    private bool Stays(int state, bool[] leafMoves) =>
        leafMoves[_inputs + state] && (!_loaded[_inputs + state] || _code.NextStates[state] == _inputs + state);

    private (Move[] FromInputs, Move[] FromStates) LoadLeaves()
    {
        List<Move> inputs = [];
        List<Move> states = [];
        for (int leaf = 0; leaf < _loaded.Length; leaf++)
        {
            if (_loaded[leaf] && _needed[leaf])
            {
                _placeOf[leaf] = NewRegister(0);
                (leaf < _inputs ? inputs : states).Add(new Move(leaf < _inputs ? leaf : leaf - _inputs, _placeOf[leaf]));
            }
        }

        return ([.. inputs], [.. states]);
    }

    private void Emit(in Instruction one, int index, long[] values)
    {
        if (!_needed[one.Target])
        {
            return;
        }

        if (!_classes.Moves(one.Target))
        {
            if (one.Kind is ExpressionKind.Equal or ExpressionKind.Less or ExpressionKind.LessOrEqual && (_classes.Moves(one.First) || _classes.Moves(one.Second)))
            {
                _expected.Add(new ExpectedOutcome(Write(one, values), values[one.Target], index));
            }

            return;
        }

        _placeOf[one.Target] = one.Kind switch
        {
            ExpressionKind.IfThenElse when !_classes.Moves(one.First) => PlaceOf(values[one.First] != 0 ? one.Second : one.Third, values),
            ExpressionKind.And or ExpressionKind.Or when !_classes.Moves(one.First) => PlaceOf(one.Second, values),
            ExpressionKind.And or ExpressionKind.Or when !_classes.Moves(one.Second) => PlaceOf(one.First, values),
            _ => Write(one, values),
        };
    }

    private int Write(in Instruction one, long[] values)
    {
        int first = PlaceOf(one.First, values);
        int second = one.Kind is ExpressionKind.Not ? 0 : PlaceOf(one.Second, values);
        int third = one.Kind is ExpressionKind.IfThenElse ? PlaceOf(one.Third, values) : 0;
        int target = NewRegister(0);
        _instructions.Add(new Instruction(one.Kind, target, first, second, third));
        return target;
    }

    /// <summary>Where a value is among the specialised registers: a known one stands there as a constant.</summary>
    private int PlaceOf(int register, long[] values)
    {
        if (_classes.Moves(register))
        {
            return _placeOf[register];
        }

        long value = values[register];
        if (!_constants.TryGetValue(value, out int place))
        {
            _constants.Add(value, place = NewRegister(value));
        }

        return place;
    }

    private int NewRegister(long value)
    {
        _registers.Add(value);
        return _registers.Count - 1;
    }

    private ResultList NextStates(long[] values, bool[] leafMoves, out bool changesSituation, out int[] mayChangeSituation)
    {
        ResultList results = new(_code.NextStates.Length);
        List<int> computed = [];
        changesSituation = false;
        for (int state = 0; state < _code.NextStates.Length; state++)
        {
            int root = _code.NextStates[state];
            if (Stays(state, leafMoves))
            {
                continue;
            }

            Add(results, state, root, values);
            if (!leafMoves[_inputs + state] && _classes.Moves(root))
            {
                computed.Add(state);
            }
            else if (!leafMoves[_inputs + state])
            {
                changesSituation |= values[root] != values[_inputs + state];
            }
        }

        mayChangeSituation = [.. computed];
        return results;
    }

    private ResultList Results(int[] roots, long[] values)
    {
        ResultList results = new(roots.Length);
        for (int index = 0; index < roots.Length; index++)
        {
            Add(results, index, roots[index], values);
        }

        return results;
    }

    private void Add(ResultList results, int place, int root, long[] values)
    {
        if (_classes.Moves(root))
        {
            results.AddComputed(_placeOf[root], place);
        }
        else
        {
            results.AddKnown(place, values[root]);
        }
    }

    /// <summary>Results in the making.</summary>
    private readonly struct ResultList(int most)
    {
        private readonly List<int> _places = new(most);
        private readonly List<long> _known = new(most);
        private readonly List<Move> _computed = [];

        public void AddKnown(int place, long value)
        {
            _places.Add(place);
            _known.Add(value);
        }

        public void AddComputed(int register, int place) => _computed.Add(new Move(register, place));

        public KnownValues Known => new([.. _places], [.. _known]);

        public Move[] Computed => [.. _computed];
    }
}
