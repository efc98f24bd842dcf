using System.Collections.Immutable;
using System.Numerics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// Runs a system by its instructions and, where scan after scan is alike but for clocks and readings,
/// by what is left of them then. Its results are those of the <see cref="Interpreter"/> for any inputs
/// and states; only its time differs. Ready at once, so the choice for a run with a plant, whether long or short.
/// </summary>
public sealed class SpecialisingStepper : Stepper
{
    /// <summary>Situations kept; past these all are forgotten.</summary>
    private const int MostSituations = 1024;

    /// <summary>An input number that was found changed so often is counted as moving; numbers among the states are from the start.</summary>
    private const int ChangesOfMovingNumber = 3;

    /// <summary>So is a truth value or a name.</summary>
    private const int ChangesOfMovingName = 40;

    /// <summary>Integers of fewer values are names of something (a state, a step), not quantities.</summary>
    private const int LeastSpanOfNumber = 8;

    /// <summary>A comparison that came out otherwise than expected so often is not counted on.</summary>
    private const int MissesOfVarying = 32;

    private readonly InstructionList _code;
    private readonly long[] _registers;
    private readonly Specialiser _specialiser;
    private readonly bool[] _isNumber;
    private readonly bool[] _moves;
    private readonly long[] _stillMask;
    private readonly int[] _changes;
    private readonly bool[] _varies;
    private readonly int[] _misses;
    private readonly long[] _last;
    private readonly Dictionary<int, ScanSituation> _situations = [];
    private ScanSituation? _situation;
    private SpecialisedScan? _lastScan;

    public SpecialisingStepper(TransitionSystem system, ImmutableArray<Expression> observed)
        : base(system, observed)
    {
        _code = new InstructionList(system, observed);
        _registers = [.. _code.InitialRegisters];
        _specialiser = new Specialiser(_code, Inputs.Length);
        int leaves = Inputs.Length + States.Length;
        _isNumber = [.. system.Inputs.Concat(system.States.Select(state => state.Variable)).Select(variable => variable.Range.Maximum - variable.Range.Minimum >= LeastSpanOfNumber)];
        _moves = new bool[leaves];
        _stillMask = new long[leaves];
        Array.Fill(_stillMask, -1);
        for (int leaf = Inputs.Length; leaf < leaves; leaf++)
        {
            _moves[leaf] = _isNumber[leaf];
            _stillMask[leaf] = _moves[leaf] ? 0 : -1;
        }

        _changes = new int[leaves];
        _last = new long[leaves];
        _varies = new bool[_code.Instructions.Length];
        _misses = new int[_varies.Length];
    }

    /// <summary>How many scans could not be shortened.</summary>
    public long WholeScans { get; private set; }

    public override void Step()
    {
        if (_situation is null || !Fits(_situation))
        {
            _situation = Find();
        }

        if (_situation is { } situation)
        {
            int missed = -1;
            for (int index = 0; index < situation.Count; index++)
            {
                SpecialisedScan scan = situation[index];
                if (scan.TryStep(this, ReferenceEquals(scan, _lastScan), out int miss))
                {
                    situation.Prefer(index);
                    _lastScan = scan;
                    return;
                }

                missed = missed < 0 ? miss : missed;
            }

            if (missed >= 0 && ++_misses[missed] == MissesOfVarying)
            {
                _varies[missed] = true;
                Forget();
            }
        }

        StepWhole();
    }

    private void StepWhole()
    {
        WholeScans++;
        _lastScan = null;
        Inputs.CopyTo(_registers, 0);
        States.CopyTo(_registers, Inputs.Length);
        Learn();
        InstructionExecution.Execute(_code.Runs, _code.Instructions, _registers);
        Gather(_code.Outputs, Outputs);
        Gather(_code.Observed, Observed);
        Gather(_code.NextStates, States);
        if (_situation is { } situation && situation.Met++ > 0)
        {
            situation.Add(_specialiser.Specialise(_registers, _moves, _varies));
        }
    }

    /// <summary>Which leaves changed since the last whole scan.</summary>
    private void Learn()
    {
        Span<long> leaves = _registers.AsSpan(0, _last.Length);
        bool forget = false;
        for (int leaf = 0; leaf < leaves.Length; leaf++)
        {
            if (leaves[leaf] != _last[leaf] && !_moves[leaf] && ++_changes[leaf] == (_isNumber[leaf] ? ChangesOfMovingNumber : ChangesOfMovingName))
            {
                _moves[leaf] = true;
                _stillMask[leaf] = 0;
                forget = true;
            }
        }

        leaves.CopyTo(_last);
        if (forget)
        {
            Forget();
        }

        if (_situation is null)
        {
            if (_situations.Count == MostSituations)
            {
                Forget();
            }

            _situation = new ScanSituation(leaves.ToArray());
            _situations[Digest()] = _situation;
        }
    }

    private void Forget()
    {
        _situations.Clear();
        _situation = null;
    }

    private bool Fits(ScanSituation situation) =>
        Same(Inputs, situation.Leaves.AsSpan(0, Inputs.Length), _stillMask.AsSpan(0, Inputs.Length))
        && Same(States, situation.Leaves.AsSpan(Inputs.Length), _stillMask.AsSpan(Inputs.Length));

    private ScanSituation? Find() => _situations.TryGetValue(Digest(), out ScanSituation? found) && Fits(found) ? found : null;

    /// <summary>Of the leaves that stand still.</summary>
    private int Digest()
    {
        ulong digest = 0;
        for (int index = 0; index < Inputs.Length; index++)
        {
            digest = (BitOperations.RotateLeft(digest, 5) ^ (ulong)(Inputs[index] & _stillMask[index])) * 0x9E3779B97F4A7C15UL;
        }

        for (int index = 0; index < States.Length; index++)
        {
            digest = (BitOperations.RotateLeft(digest, 5) ^ (ulong)(States[index] & _stillMask[Inputs.Length + index])) * 0x9E3779B97F4A7C15UL;
        }

        return (int)(digest >> 32);
    }

    private static bool Same(ReadOnlySpan<long> left, ReadOnlySpan<long> right, ReadOnlySpan<long> mask)
    {
        Vector<long> differing = Vector<long>.Zero;
        int index = 0;
        for (; index <= left.Length - Vector<long>.Count; index += Vector<long>.Count)
        {
            differing |= (new Vector<long>(left[index..]) ^ new Vector<long>(right[index..])) & new Vector<long>(mask[index..]);
        }

        long rest = 0;
        for (; index < left.Length; index++)
        {
            rest |= (left[index] ^ right[index]) & mask[index];
        }

        return rest == 0 && differing == Vector<long>.Zero;
    }

    private void Gather(int[] places, long[] values)
    {
        for (int index = 0; index < places.Length; index++)
        {
            values[index] = _registers[places[index]];
        }
    }
}
