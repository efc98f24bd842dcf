using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// States to begin from, sorted by where a unit stood in them: its procedural state and the steps at work. Of each such place a
/// few are kept, and others now and then instead, so that clocks get on. Some places more are for states in which something
/// Boolean was so, or not so, for the first time. Episodes begin rather where few began. Room is taken once.
/// </summary>
internal sealed class Places
{
    private const int MostPlaces = 640;
    private const int Kept = 3;
    private const int Firsts = 64;
    private const int Tries = 4;

    /// <summary>Of so many looks at a known place one is kept.</summary>
    private const int LooksBetweenKeeps = 300;

    /// <summary>Slots are numbered from 0.</summary>
    public const int Slots = MostPlaces * Kept;

    private readonly Random _random;
    private readonly int[][] _telling;
    private readonly int[] _booleans;
    private readonly bool[] _seen;
    private readonly Dictionary<ulong, int> _known = new(MostPlaces);
    private readonly long[][] _states;
    private readonly long[][] _inputs;
    private readonly int[] _filled = new int[MostPlaces];
    private readonly int[] _begun = new int[MostPlaces];
    private int _firsts;

    public Places(LoadedSite site, TransitionSystem system, Random random)
    {
        _random = random;
        _telling = [.. site.Programs.Units.Select(unit => system.States.Select(state => state.Variable).Where(variable => Tells(variable, unit.Name)).Select(variable => variable.Index).ToArray())];
        _booleans = [.. system.States.Where(state => state.Variable.Sort == Sort.Boolean).Select(state => state.Variable.Index)];
        _seen = new bool[2 * _booleans.Length];
        _states = [.. Enumerable.Range(0, Slots).Select(_ => new long[system.States.Length])];
        _inputs = [.. Enumerable.Range(0, Slots).Select(_ => new long[system.Inputs.Length])];
    }

    public int Count { get; private set; }

    /// <summary>Looks whether a state is to be kept, and does so; <paramref name="kept"/> is told each slot that now holds it.</summary>
    public void Look(ReadOnlySpan<long> states, long[] inputs, bool isFirst, Action<int>? kept)
    {
        for (int unit = 0; unit < _telling.Length; unit++)
        {
            ulong mark = (ulong)unit + 14695981039346656037;
            foreach (int index in _telling[unit])
            {
                mark = (mark ^ (ulong)states[index]) * 1099511628211;
            }

            if (!_known.TryGetValue(mark, out int place))
            {
                Keep(New(mark), states, inputs, kept);
            }
            else if (_random.Next(LooksBetweenKeeps) == 0)
            {
                Keep(place, states, inputs, kept);
            }
        }

        if (SeesFirst(states) || isFirst)
        {
            ulong mark = (ulong)(_firsts++ % Firsts);
            Keep(_known.TryGetValue(mark, out int place) ? place : New(mark), states, inputs, kept);
        }
    }

    /// <summary>Puts one back; answers its slot.</summary>
    public int Begin(Stepper stepper)
    {
        int place = _random.Next(Count);
        for (int more = 1; more < Tries; more++)
        {
            int other = _random.Next(Count);
            place = _begun[other] < _begun[place] ? other : place;
        }

        _begun[place]++;
        int slot = (place * Kept) + _random.Next(_filled[place]);
        stepper.SetStates(_states[slot]);
        _inputs[slot].CopyTo(stepper.Inputs, 0);
        return slot;
    }

    private static bool Tells(Variable variable, string unit) =>
        variable.Name == $"{unit}.state" || (variable.Name.StartsWith($"{unit}.", StringComparison.Ordinal) && variable.Name.EndsWith(".active", StringComparison.Ordinal));

    /// <summary>A place for the mark; -1 where there is no more room.</summary>
    private int New(ulong mark)
    {
        if (Count == MostPlaces)
        {
            return -1;
        }

        _known.Add(mark, Count);
        return Count++;
    }

    private void Keep(int place, ReadOnlySpan<long> states, long[] inputs, Action<int>? kept)
    {
        if (place < 0)
        {
            return;
        }

        int slot = (place * Kept) + (_filled[place] < Kept ? _filled[place]++ : _random.Next(Kept));
        states.CopyTo(_states[slot]);
        inputs.CopyTo(_inputs[slot], 0);
        kept?.Invoke(slot);
    }

    private bool SeesFirst(ReadOnlySpan<long> states)
    {
        bool found = false;
        for (int place = 0; place < _booleans.Length; place++)
        {
            int value = (2 * place) + (states[_booleans[place]] == 0 ? 0 : 1);
            found |= !_seen[value];
            _seen[value] = true;
        }

        return found;
    }
}
