using System.Diagnostics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// Which values of a scan are known beforehand, given which leaves move. What follows from leaves that do not move is known. A
/// comparison of moving numbers is expected to come out as it did, so that what follows from it is known too, unless its outcome is
/// known to vary.
/// </summary>
internal sealed class ValueClasses(InstructionList code)
{
    private const int MostChecks = 1 << 20;

    private readonly bool[] _moves = new bool[code.InitialRegisters.Length];
    private readonly int[] _checks = new int[code.InitialRegisters.Length];
    private readonly bool[] _differs = new bool[code.InitialRegisters.Length];
    private int[] _depending = [];

    /// <summary>A value that has to be computed in each scan.</summary>
    public bool Moves(int register) => _moves[register];

    /// <summary>On about how many checked comparisons a known value rests; 0 for one that cannot differ.</summary>
    public int Checks(int register) => _checks[register];

    /// <summary>Known, and enough for a connective to be known: false for a conjunction, true for a disjunction.</summary>
    public bool Decides(int operand, long[] values, long decisive) => !_moves[operand] && values[operand] == decisive;

    /// <summary>The instructions, in order, that a moving leaf has a say in; all others give known values in any case.</summary>
    public ReadOnlySpan<int> Depending => _depending;

    /// <summary>Takes which inputs, then states, can move from now on.</summary>
    public void Expect(bool[] leafMoves)
    {
        Array.Clear(_moves);
        Array.Clear(_checks);
        leafMoves.CopyTo(_moves, 0);
        List<int> depending = [];
        for (int index = 0; index < code.Instructions.Length; index++)
        {
            Instruction one = code.Instructions[index];
            if (_moves[one.First] || (one.Kind is not ExpressionKind.Not && _moves[one.Second]) || (one.Kind is ExpressionKind.IfThenElse && _moves[one.Third]))
            {
                _moves[one.Target] = true;
                depending.Add(index);
            }
        }

        Array.Clear(_moves);
        _depending = [.. depending];
    }

    /// <param name="values">All registers after a whole scan.</param>
    /// <param name="leafMoves">Which inputs, then states, move in it; none but those expected to.</param>
    /// <param name="varies">Which instructions' outcomes are not to be counted on.</param>
    public void Classify(long[] values, bool[] leafMoves, bool[] varies)
    {
        leafMoves.CopyTo(_moves, 0);
        foreach (int index in _depending)
        {
            ref readonly Instruction one = ref code.Instructions[index];
            (_moves[one.Target], int checks) = Classify(one, values, varies[index]);
            _checks[one.Target] = Math.Min(checks, MostChecks);
        }
    }

    /// <summary>As <see cref="Classify(long[], bool[], bool[])"/> with these leaves moving too: only what follows from them is looked at.</summary>
    public void Reclassify(long[] values, IReadOnlyList<int> leaves, bool[] varies)
    {
        Array.Clear(_differs);
        foreach (int leaf in leaves)
        {
            _moves[leaf] = true;
            _differs[leaf] = true;
        }

        foreach (int index in _depending)
        {
            ref readonly Instruction one = ref code.Instructions[index];
            if (_differs[one.First] || _differs[one.Second] || _differs[one.Third])
            {
                (bool moves, int checks) = Classify(one, values, varies[index]);
                checks = Math.Min(checks, MostChecks);
                _differs[one.Target] = moves != _moves[one.Target] || checks != _checks[one.Target];
                (_moves[one.Target], _checks[one.Target]) = (moves, checks);
            }
        }
    }

    private (bool Moves, int Checks) Classify(in Instruction one, long[] values, bool varies)
    {
        (int first, int second) = (one.First, one.Second);
        switch (one.Kind)
        {
            case ExpressionKind.Not:
            case ExpressionKind.Scale:
                return (_moves[first], _checks[first]);
            case ExpressionKind.And:
                return Connective(first, second, values, 0);
            case ExpressionKind.Or:
                return Connective(first, second, values, 1);
            case ExpressionKind.IfThenElse:
                return Choice(one, values);
            case ExpressionKind.Add:
                return (_moves[first] || _moves[second], _checks[first] + _checks[second]);
            case ExpressionKind.Equal:
            case ExpressionKind.Less:
            case ExpressionKind.LessOrEqual:
                bool compares = _moves[first] || _moves[second];
                return (compares && varies, _checks[first] + _checks[second] + (compares ? 1 : 0));
            default:
                throw new UnreachableException($"no class for {one.Kind}");
        }
    }

    private (bool Moves, int Checks) Connective(int first, int second, long[] values, long decisive) =>
        (Decides(first, values, decisive), Decides(second, values, decisive)) switch
        {
            (true, true) => (false, Math.Min(_checks[first], _checks[second])),
            (true, false) => (false, _checks[first]),
            (false, true) => (false, _checks[second]),
            _ => (_moves[first] || _moves[second], _checks[first] + _checks[second]),
        };

    private (bool Moves, int Checks) Choice(in Instruction one, long[] values)
    {
        if (!_moves[one.First])
        {
            int chosen = values[one.First] != 0 ? one.Second : one.Third;
            return (_moves[chosen], _checks[one.First] + _checks[chosen]);
        }

        bool alike = !_moves[one.Second] && !_moves[one.Third] && values[one.Second] == values[one.Third];
        return (!alike, _checks[one.Second] + _checks[one.Third] + (alike ? 0 : _checks[one.First]));
    }
}
