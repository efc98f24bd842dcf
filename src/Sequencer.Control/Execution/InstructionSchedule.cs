using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// Instructions in an order in which those of one kind lie together as far as their operands allow: what to do is then decided once for
/// many, where a processor would guess wrong for nearly each of them.
/// </summary>
internal sealed class InstructionSchedule
{
    private const int Operands = 3;
    private static readonly int Kinds = Enum.GetValues<ExpressionKind>().Length;

    private readonly IReadOnlyList<Instruction> _given;
    private readonly int[] _missing;

    /// <summary>The uses of each instruction's outcome as chains: the first of each, and what comes after each use, three to a user.</summary>
    private readonly int[] _firstUse;
    private readonly int[] _nextUse;
    private readonly Stack<int>[] _ready = [.. Enumerable.Range(0, Kinds).Select(_ => new Stack<int>())];
    private readonly List<InstructionRun> _runs = [];
    private int _ordered;

    /// <param name="instructions">In an order in which they can be executed; no two have one target.</param>
    /// <param name="registers">How many registers there are.</param>
    public InstructionSchedule(IReadOnlyList<Instruction> instructions, int registers)
    {
        _given = instructions;
        Ordered = new Instruction[instructions.Count];
        _missing = new int[instructions.Count];
        _firstUse = new int[instructions.Count];
        _nextUse = new int[Operands * instructions.Count];
        Array.Fill(_firstUse, -1);
        int[] writer = new int[registers];
        Array.Fill(writer, -1);
        for (int index = 0; index < instructions.Count; index++)
        {
            Instruction instruction = instructions[index];
            Await(index, Operands * index, writer[instruction.First]);
            Await(index, (Operands * index) + 1, writer[instruction.Second]);
            Await(index, (Operands * index) + 2, writer[instruction.Third]);
            writer[instruction.Target] = index;
            AddIfReady(index);
        }

        while (_ordered < Ordered.Length)
        {
            Take((ExpressionKind)Array.IndexOf(_ready, _ready.MaxBy(kind => kind.Count)));
        }

        void Await(int user, int use, int awaited)
        {
            if (awaited >= 0)
            {
                (_nextUse[use], _firstUse[awaited]) = (_firstUse[awaited], use);
                _missing[user]++;
            }
        }
    }

    public Instruction[] Ordered { get; }

    public InstructionRun[] Runs => [.. _runs];

    /// <summary>All of one kind, and those of it that become ready by them.</summary>
    private void Take(ExpressionKind kind)
    {
        int start = _ordered;
        while (_ready[(int)kind].TryPop(out int taken))
        {
            Ordered[_ordered++] = _given[taken];
            for (int use = _firstUse[taken]; use >= 0; use = _nextUse[use])
            {
                int user = use / Operands;
                _missing[user]--;
                AddIfReady(user);
            }
        }

        _runs.Add(new InstructionRun(kind, start, _ordered));
    }

    private void AddIfReady(int index)
    {
        if (_missing[index] == 0)
        {
            _ready[(int)_given[index].Kind].Push(index);
        }
    }
}
