using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// Makes a <see cref="SpecialisedScan"/> from a scan that was just executed whole: its registers hold
/// the values. A leaf is still or moves; what follows from still leaves alone is known. A comparison of
/// moving numbers is expected to come out as it did, so that what follows from it is known too, unless
/// its outcome is known to change often. Of the known results only those comparisons are checked that
/// they rest on: a conjunction that is false needs one false member only.
/// </summary>
internal sealed class Specialiser
{
    private const int MostChecks = 1 << 20;

    /// <summary>For results that go to no leaf.</summary>
    private const int Elsewhere = int.MinValue;

    private readonly InstructionList _code;
    private readonly int _inputs;
    private readonly bool[] _moves;
    private readonly int[] _checks;
    private readonly bool[] _needed;
    private readonly int[] _placeOf;
    private readonly List<long> _registers = [];
    private readonly List<Instruction> _instructions = [];
    private readonly List<ExpectedOutcome> _expected = [];
    private readonly Dictionary<long, int> _constants = [];

    public Specialiser(InstructionList code, int inputs)
    {
        _code = code;
        _inputs = inputs;
        _moves = new bool[code.InitialRegisters.Length];
        _checks = new int[_moves.Length];
        _needed = new bool[_moves.Length];
        _placeOf = new int[_moves.Length];
    }

    /// <param name="values">All registers after the scan.</param>
    /// <param name="leafMoves">Which inputs, then states, move.</param>
    /// <param name="varies">Which instructions' outcomes are not to be counted on.</param>
    public SpecialisedScan Specialise(long[] values, bool[] leafMoves, bool[] varies)
    {
        Array.Clear(_moves);
        Array.Clear(_checks);
        Array.Clear(_needed);
        Array.Fill(_placeOf, -1);
        _registers.Clear();
        _instructions.Clear();
        _expected.Clear();
        _constants.Clear();
        leafMoves.CopyTo(_moves, 0);
        Instruction[] all = _code.Instructions;
        for (int index = 0; index < all.Length; index++)
        {
            Classify(all[index], values, varies[index]);
        }

        NeedAll(_code.NextStates, _inputs);
        NeedAll(_code.Outputs, Elsewhere);
        NeedAll(_code.Observed, Elsewhere);

        for (int index = all.Length - 1; index >= 0; index--)
        {
            NeedOperands(all[index], values);
        }

        (Move[] fromInputs, Move[] fromStates) = LoadLeaves(leafMoves);
        for (int index = 0; index < all.Length; index++)
        {
            Emit(all[index], index, values);
        }

        ScanResults nextStates = Results(_code.NextStates, values, _inputs);
        ScanResults outputs = Results(_code.Outputs, values, Elsewhere);
        ScanResults observed = Results(_code.Observed, values, Elsewhere);
        InstructionSchedule schedule = new(_instructions, _registers.Count);
        return new SpecialisedScan([.. _registers])
        {
            Runs = schedule.Runs,
            Instructions = schedule.Ordered,
            FromInputs = fromInputs,
            FromStates = fromStates,
            Expected = [.. _expected],
            NextStates = nextStates,
            Outputs = outputs,
            Observed = observed,
        };
    }

    /// <summary>Whether an instruction's value moves, and on how many checks it rests if it does not.</summary>
    private void Classify(in Instruction one, long[] values, bool varies)
    {
        (int first, int second, int third) = (one.First, one.Second, one.Third);
        bool moves;
        int checks;
        switch (one.Kind)
        {
            case ExpressionKind.Not:
            case ExpressionKind.Scale:
                (moves, checks) = (_moves[first], _checks[first]);
                break;
            case ExpressionKind.And:
                (moves, checks) = Connective(first, second, values, 0);
                break;
            case ExpressionKind.Or:
                (moves, checks) = Connective(first, second, values, 1);
                break;
            case ExpressionKind.IfThenElse:
                (moves, checks) = Choice(one, values);
                break;
            case ExpressionKind.Add:
                (moves, checks) = (_moves[first] || _moves[second], _checks[first] + _checks[second]);
                break;
            default:
                bool compared = _moves[first] || _moves[second];
                (moves, checks) = (compared && varies, _checks[first] + _checks[second] + (compared ? 1 : 0));
                break;
        }

        _moves[one.Target] = moves;
        _checks[one.Target] = Math.Min(checks, MostChecks);
    }

    private (bool Moves, int Checks) Connective(int first, int second, long[] values, long decisive)
    {
        bool firstDecides = Decides(first, values, decisive);
        bool secondDecides = Decides(second, values, decisive);
        return (firstDecides, secondDecides) switch
        {
            (true, true) => (false, Math.Min(_checks[first], _checks[second])),
            (true, false) => (false, _checks[first]),
            (false, true) => (false, _checks[second]),
            _ => (_moves[first] || _moves[second], _checks[first] + _checks[second]),
        };
    }

    private bool Decides(int operand, long[] values, long decisive) => !_moves[operand] && values[operand] == decisive;

    private (bool Moves, int Checks) Choice(in Instruction one, long[] values)
    {
        if (!_moves[one.First])
        {
            int chosen = Chosen(one, values);
            return (_moves[chosen], _checks[one.First] + _checks[chosen]);
        }

        bool alike = !_moves[one.Second] && !_moves[one.Third] && values[one.Second] == values[one.Third];
        return (!alike, _checks[one.Second] + _checks[one.Third] + (alike ? 0 : _checks[one.First]));
    }

    private static int Chosen(in Instruction one, long[] values) => values[one.First] != 0 ? one.Second : one.Third;

    /// <param name="roots">The registers of results.</param>
    /// <param name="leaves">The leaf that the first result goes to; a leaf that keeps its value needs nothing.</param>
    private void NeedAll(int[] roots, int leaves)
    {
        for (int index = 0; index < roots.Length; index++)
        {
            if (roots[index] != leaves + index)
            {
                Need(roots[index]);
            }
        }
    }

    private void Need(int register)
    {
        if (_moves[register] || _checks[register] > 0)
        {
            _needed[register] = true;
        }
    }

    private void NeedOperands(in Instruction one, long[] values)
    {
        if (!_needed[one.Target])
        {
            return;
        }

        switch (one.Kind)
        {
            case ExpressionKind.Not:
            case ExpressionKind.Scale:
                Need(one.First);
                break;
            case ExpressionKind.And when !_moves[one.Target] && values[one.Target] == 0:
                NeedOne(one, values, 0);
                break;
            case ExpressionKind.Or when !_moves[one.Target] && values[one.Target] == 1:
                NeedOne(one, values, 1);
                break;
            case ExpressionKind.IfThenElse when !_moves[one.First]:
                Need(one.First);
                Need(Chosen(one, values));
                break;
            case ExpressionKind.IfThenElse:
                if (_moves[one.Target])
                {
                    Need(one.First);
                }

                Need(one.Second);
                Need(one.Third);
                break;
            default:
                Need(one.First);
                Need(one.Second);
                break;
        }
    }

    /// <summary>One member that decides is enough: one that is needed anyway, else the one that rests on fewer checks.</summary>
    private void NeedOne(in Instruction one, long[] values, long decisive)
    {
        bool firstDecides = Decides(one.First, values, decisive);
        bool secondDecides = Decides(one.Second, values, decisive);
        if (firstDecides && secondDecides)
        {
            if (!_needed[one.First] && !_needed[one.Second])
            {
                Need(_checks[one.First] <= _checks[one.Second] ? one.First : one.Second);
            }
        }
        else
        {
            Need(firstDecides ? one.First : one.Second);
        }
    }

    private (Move[] FromInputs, Move[] FromStates) LoadLeaves(bool[] leafMoves)
    {
        List<Move> inputs = [];
        List<Move> states = [];
        for (int leaf = 0; leaf < leafMoves.Length; leaf++)
        {
            if (leafMoves[leaf] && _needed[leaf])
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

        if (!_moves[one.Target])
        {
            if (one.Kind is ExpressionKind.Equal or ExpressionKind.Less or ExpressionKind.LessOrEqual && (_moves[one.First] || _moves[one.Second]))
            {
                int outcome = Write(one, values);
                _expected.Add(new ExpectedOutcome(outcome, values[one.Target], index));
            }

            return;
        }

        _placeOf[one.Target] = one.Kind switch
        {
            ExpressionKind.IfThenElse when !_moves[one.First] => PlaceOf(Chosen(one, values), values),
            ExpressionKind.And or ExpressionKind.Or when !_moves[one.First] => PlaceOf(one.Second, values),
            ExpressionKind.And or ExpressionKind.Or when !_moves[one.Second] => PlaceOf(one.First, values),
            _ => Write(one, values),
        };
    }

    private int Write(in Instruction one, long[] values)
    {
        int second = one.Kind is ExpressionKind.Not ? 0 : PlaceOf(one.Second, values);
        int third = one.Kind is ExpressionKind.IfThenElse ? PlaceOf(one.Third, values) : 0;
        int first = PlaceOf(one.First, values);
        int target = NewRegister(0);
        _instructions.Add(new Instruction(one.Kind, target, first, second, third));
        return target;
    }

    /// <summary>Where a value is among the specialised registers: a known one stands there as a constant.</summary>
    private int PlaceOf(int register, long[] values)
    {
        if (_moves[register])
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

    /// <summary>
    /// A leaf that moves is written in each scan, also where what it comes to is known: somebody else may have set it since. One that
    /// keeps its value is let alone.
    /// </summary>
    private ScanResults Results(int[] roots, long[] values, int leaves)
    {
        List<int> places = [];
        List<long> known = [];
        List<Move> computed = [];
        for (int index = 0; index < roots.Length; index++)
        {
            int leaf = leaves + index;
            bool leafMoves = leaf >= 0 && _moves[leaf];
            if (leafMoves && roots[index] == leaf)
            {
                continue;
            }

            if (leafMoves || _moves[roots[index]])
            {
                computed.Add(new Move(PlaceOf(roots[index], values), index));
            }
            else
            {
                places.Add(index);
                known.Add(values[roots[index]]);
            }
        }

        return new ScanResults([.. places], [.. known], [.. computed]);
    }
}
