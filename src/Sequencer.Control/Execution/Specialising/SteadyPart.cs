using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// Parts what a specialised scan has to do scan after scan from what only follows its clocks: most of what moves in a scan are timers
/// and their comparisons with limits, which need no look until the first of them is due. What compares a reading with known numbers
/// comes down to two limits of it.
/// </summary>
internal sealed class SteadyPart
{
    private readonly ScanPart _whole;
    private readonly int[] _writer;

    /// <summary>By how much each register grows from scan to scan; null where that is not known.</summary>
    private readonly long?[] _growth;

    /// <summary>Each register as a multiple of one leaf and a number; null where it is not so simple.</summary>
    private readonly StraightForm?[] _forms;

    private SteadyPart(ScanPart whole, int[] setStates, long[] registers)
    {
        _whole = whole;
        _writer = new int[registers.Length];
        Array.Fill(_writer, -1);
        for (int index = 0; index < whole.Instructions.Length; index++)
        {
            _writer[whole.Instructions[index].Target] = index;
        }

        _growth = new long?[registers.Length];
        _forms = new StraightForm?[registers.Length];
        FindForms(registers);
        FindGrowth(setStates, registers);
    }

    /// <param name="whole">All of the scan.</param>
    /// <param name="setStates">States that the scan sets to known values.</param>
    /// <param name="registers">With the constants among them.</param>
    public static (ScanPart Steady, Clock[] Clocks, Deadline[] Deadlines) Of(ScanPart whole, int[] setStates, long[] registers) =>
        new SteadyPart(whole, setStates, registers).Parted();

    private (ScanPart Steady, Clock[] Clocks, Deadline[] Deadlines) Parted()
    {
        List<Clock> clocks = [];
        List<Move> nextStates = [];
        foreach (Move move in _whole.NextStates)
        {
            if (StepOf(move) is not { } step)
            {
                nextStates.Add(move);
            }
            else if (step != 0)
            {
                clocks.Add(new Clock(move.To, step));
            }
        }

        ExpectedOutcome[] due = [.. _whole.Expected.Where(expected => Compared(expected) is not null)];
        Dictionary<int, Guard> guards = [];
        List<ExpectedOutcome> checks = [];
        foreach (ExpectedOutcome expected in _whole.Expected.Except(due))
        {
            if (Guarded(expected) is { } guard)
            {
                guards[guard.Register] = guards.TryGetValue(guard.Register, out Guard known) ? known.Within(guard) : guard;
            }
            else
            {
                checks.Add(expected);
            }
        }

        bool[] needed = Needed([.. nextStates, .. _whole.Outputs, .. _whole.Observed], checks, guards.Keys);
        InstructionSchedule schedule = new([.. _whole.Instructions.Where(one => needed[one.Target])], _growth.Length);
        ScanPart steady = new(
            schedule.Ordered,
            schedule.Runs,
            [.. _whole.FromInputs.Where(move => needed[move.To])],
            [.. _whole.FromStates.Where(move => needed[move.To])],
            [.. guards.Values],
            [.. checks],
            [.. nextStates],
            _whole.Outputs,
            _whole.Observed);
        return (steady, [.. clocks], [.. due.Select(expected => Compared(expected)).OfType<Deadline>()]);
    }

    private void FindForms(long[] registers)
    {
        for (int register = 0; register < registers.Length; register++)
        {
            _forms[register] = _writer[register] < 0 ? StraightForm.Number(registers[register]) : null;
        }

        foreach (Move move in _whole.FromInputs.Concat(_whole.FromStates))
        {
            _forms[move.To] = StraightForm.Of(move.To);
        }

        foreach (ref readonly Instruction one in _whole.Instructions.AsSpan())
        {
            _forms[one.Target] = one.Kind switch
            {
                ExpressionKind.Add => StraightForm.Sum(_forms[one.First], _forms[one.Second]),
                ExpressionKind.Scale when IsConstant(one.Second) => _forms[one.First]?.Times(registers[one.Second]),
                _ => null,
            };
        }
    }

    private bool IsConstant(int register) => _forms[register] is { Leaf: < 0 } && _writer[register] < 0;

    private void FindGrowth(int[] setStates, long[] registers)
    {
        for (int register = 0; register < registers.Length; register++)
        {
            _growth[register] = IsConstant(register) ? 0 : null;
        }

        Dictionary<int, int> nextOf = _whole.NextStates.ToDictionary(move => move.To, move => move.From);
        foreach (Move load in _whole.FromStates)
        {
            // A state that is not written keeps its value; one that is set may stand elsewhere in the first scan.
            _growth[load.To] = nextOf.TryGetValue(load.From, out int next) ? StepFrom(load.To, next, registers)
                : setStates.Contains(load.From) ? null
                : 0;
        }

        foreach (ref readonly Instruction one in _whole.Instructions.AsSpan())
        {
            _growth[one.Target] = one.Kind switch
            {
                ExpressionKind.Add => _growth[one.First] + _growth[one.Second],
                ExpressionKind.Scale when IsConstant(one.Second) => _growth[one.First] * registers[one.Second],
                _ => null,
            };
        }

        long? StepFrom(int loaded, int next, long[] values)
        {
            if (next == loaded)
            {
                return 0;
            }

            if (_writer[next] < 0 || _whole.Instructions[_writer[next]] is not { Kind: ExpressionKind.Add } add)
            {
                return null;
            }

            return add.First == loaded && IsConstant(add.Second) ? values[add.Second]
                : add.Second == loaded && IsConstant(add.First) ? values[add.First]
                : null;
        }
    }

    /// <summary>The step of a clock's next value; null of another state.</summary>
    private long? StepOf(Move next)
    {
        foreach (ref readonly Move load in _whole.FromStates.AsSpan())
        {
            if (load.From == next.To)
            {
                return _growth[load.To];
            }
        }

        return null;
    }

    private Deadline? Compared(ExpectedOutcome expected)
    {
        Instruction one = _whole.Instructions[_writer[expected.Register]];
        return _growth[one.First] - _growth[one.Second] is { } closing
            ? new Deadline(one.Kind, one.First, one.Second, closing, expected.Value != 0)
            : null;
    }

    private Guard? Guarded(ExpectedOutcome expected)
    {
        Instruction one = _whole.Instructions[_writer[expected.Register]];
        return StraightForm.Sum(_forms[one.First], _forms[one.Second]?.Times(-1))?.Against0(one.Kind, expected.Value != 0, expected.Instruction);
    }

    private bool[] Needed(Move[] results, List<ExpectedOutcome> checks, IEnumerable<int> guarded)
    {
        bool[] needed = new bool[_growth.Length];
        Array.ForEach(results, move => needed[move.From] = true);
        checks.ForEach(expected => needed[expected.Register] = true);
        foreach (int register in guarded)
        {
            needed[register] = true;
        }

        for (int index = _whole.Instructions.Length - 1; index >= 0; index--)
        {
            ref readonly Instruction one = ref _whole.Instructions[index];
            if (needed[one.Target])
            {
                needed[one.First] = true;
                needed[one.Second] |= one.Kind is not ExpressionKind.Not;
                needed[one.Third] |= one.Kind is ExpressionKind.IfThenElse;
            }
        }

        return needed;
    }
}
