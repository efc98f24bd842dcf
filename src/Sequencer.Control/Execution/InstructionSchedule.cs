using System.Runtime.InteropServices;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// Instructions in an order in which those of one kind lie together as far as their operands allow: what to do is then decided once for
/// many, where a processor would guess wrong for nearly each of them.
/// </summary>
internal sealed class InstructionSchedule
{
    private readonly Instruction[] _given;
    private readonly int[] _missing;
    private readonly List<int>[] _users;
    private readonly SortedDictionary<ExpressionKind, Stack<int>> _ready = [];
    private readonly List<Instruction> _ordered;
    private readonly List<InstructionRun> _runs = [];

    /// <param name="instructions">In an order in which they can be executed; no two have one target.</param>
    /// <param name="registers">How many registers there are.</param>
    public InstructionSchedule(IReadOnlyList<Instruction> instructions, int registers)
    {
        _given = [.. instructions];
        _ordered = new List<Instruction>(_given.Length);
        _missing = new int[_given.Length];
        _users = [.. Enumerable.Range(0, _given.Length).Select(_ => new List<int>())];
        int[] writer = new int[registers];
        Array.Fill(writer, -1);
        for (int index = 0; index < _given.Length; index++)
        {
            Instruction instruction = _given[index];
            Await(index, writer[instruction.First]);
            Await(index, writer[instruction.Second]);
            Await(index, writer[instruction.Third]);
            writer[instruction.Target] = index;
            AddIfReady(index);
        }

        while (_ordered.Count < _given.Length)
        {
            Take(_ready.MaxBy(kind => kind.Value.Count).Key);
        }
    }

    public Instruction[] Ordered => [.. _ordered];

    public InstructionRun[] Runs => [.. _runs];

    private void Await(int user, int writer)
    {
        if (writer >= 0)
        {
            _users[writer].Add(user);
            _missing[user]++;
        }
    }

    /// <summary>All of one kind, and those of it that become ready by them.</summary>
    private void Take(ExpressionKind kind)
    {
        int start = _ordered.Count;
        while (_ready[kind].TryPop(out int taken))
        {
            _ordered.Add(_given[taken]);
            foreach (int user in CollectionsMarshal.AsSpan(_users[taken]))
            {
                _missing[user]--;
                AddIfReady(user);
            }
        }

        _runs.Add(new InstructionRun(kind, start, _ordered.Count));
    }

    private void AddIfReady(int index)
    {
        if (_missing[index] == 0)
        {
            ExpressionKind kind = _given[index].Kind;
            if (!_ready.TryGetValue(kind, out Stack<int>? ready))
            {
                _ready.Add(kind, ready = []);
            }

            ready.Push(index);
        }
    }
}
