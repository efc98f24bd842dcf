using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// What is known of how the leaves of a system's scans, its inputs and then its states, behave: which move, and which of those rest
/// at few values. What is learnt costs or spares time and never changes a result.
/// </summary>
internal sealed class LeafHabits
{
    /// <summary>Integers of fewer values are names of something (a state, a step), not quantities.</summary>
    private const int LeastSpanOfNumber = 8;

    /// <summary>An input number that was found changed so often within a stretch counts as moving; numbers among the states do from the start.</summary>
    private const int ChangesOfMovingNumber = 3;

    /// <summary>So does a truth value or a name.</summary>
    private const int ChangesOfMovingName = 40;

    /// <summary>A state that so often was found elsewhere than where it rested, or moved with others after all, is not counted on to rest.</summary>
    private const int MissesOfRestless = 8;

    private readonly bool[] _isNumber;
    private readonly long[] _last;
    private readonly int[] _changes;
    private readonly int[] _misses;
    private readonly bool[] _movesFromTheStart;

    public LeafHabits(TransitionSystem system)
    {
        Variable[] leaves = [.. system.Inputs, .. system.States.Select(state => state.Variable)];
        _isNumber = [.. leaves.Select(leaf => leaf.Range.Maximum - leaf.Range.Minimum >= LeastSpanOfNumber)];
        _last = new long[leaves.Length];
        _changes = new int[leaves.Length];
        _misses = new int[leaves.Length];
        _movesFromTheStart = [.. leaves.Select((leaf, index) => leaf.Role != VariableRole.Input && _isNumber[index])];
        Moves = new bool[leaves.Length];
        MayRest = new bool[leaves.Length];
        StillMask = new long[leaves.Length];
        Forget();
    }

    public bool[] Moves { get; }

    /// <summary>Grows whenever others move.</summary>
    public long Version { get; private set; }

    public bool[] MayRest { get; }

    /// <summary>All bits where a leaf does not move, none where it does.</summary>
    public long[] StillMask { get; }

    /// <summary>What is rare is not to add up over many scans.</summary>
    public void BeginStretch()
    {
        Array.Clear(_changes);
        Array.Clear(_misses);
    }

    /// <summary>Back to what is taken of a system that has not run.</summary>
    public void Forget()
    {
        BeginStretch();
        Version++;
        for (int leaf = 0; leaf < Moves.Length; leaf++)
        {
            Moves[leaf] = _movesFromTheStart[leaf];
            MayRest[leaf] = true;
            StillMask[leaf] = Moves[leaf] ? 0 : -1;
        }
    }

    /// <summary>Takes the leaves of a whole scan; true where more of them are found to move.</summary>
    public bool Learn(ReadOnlySpan<long> leaves)
    {
        bool more = false;
        for (int leaf = 0; leaf < leaves.Length; leaf++)
        {
            if (leaves[leaf] != _last[leaf] && !Moves[leaf] && ++_changes[leaf] == (_isNumber[leaf] ? ChangesOfMovingNumber : ChangesOfMovingName))
            {
                Moves[leaf] = true;
                StillMask[leaf] = 0;
                more = true;
            }
        }

        Version += more ? 1 : 0;

        leaves.CopyTo(_last);
        return more;
    }

    /// <summary>A leaf did not rest as it was counted on; true where it is not counted on any more.</summary>
    public bool Missed(int leaf)
    {
        MayRest[leaf] = ++_misses[leaf] < MissesOfRestless;
        return !MayRest[leaf];
    }
}
