using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// Inputs of hours: a way of the program, then long phases in which nobody commands anything but that a held unit is restarted, motors and valves answer,
/// and readings stand still, walk about a value or move steadily; then the unit is aborted and reset, and all of it comes once more. What
/// shows only when a limit has passed twice, or a dose has missed several times, is met so.
/// </summary>
internal sealed class LongStay
{
    private const int Rounds = 2;
    private const int PhasesOfRound = 4;
    private const int ScansToRestart = 150;
    private const int ScansToFollow = 4;
    private const int ScansOfFlicker = 30;
    private const int ScansOfRest = 1_200;
    private static readonly ImmutableArray<int> PhaseScans = [2_000, 12_000, 25_000, 45_000, 80_000];

    private readonly Trace _way;
    private readonly bool _isUnsteady;
    private readonly int _seed;
    private Random _random;
    private readonly ContactHabits _habits;
    private readonly ImmutableArray<int> _readings;
    private readonly ImmutableArray<int> _contacts;
    private readonly ImmutableArray<int> _switches;
    private readonly ImmutableArray<ImmutableArray<long>> _seen;
    private readonly ImmutableArray<IntegerRange> _ranges;
    private readonly ImmutableArray<int> _restarts;
    private readonly ImmutableArray<int> _aborts;
    private readonly ImmutableArray<int> _resets;
    private readonly IEnumerator<bool> _scans;
    private long[] _inputs = [];
    private long[] _outputs = [];

    /// <param name="system">The program's system.</param>
    /// <param name="way">A run of it, gone first.</param>
    /// <param name="ways">All that are known.</param>
    /// <param name="isUnsteady">Whether a contact flickers in each phase, and the second time is just as the first.</param>
    /// <param name="seed">Of what is drawn.</param>
    public LongStay(TransitionSystem system, Trace way, IReadOnlyList<Trace> ways, bool isUnsteady, int seed)
    {
        _way = way;
        _isUnsteady = isUnsteady;
        _seed = seed;
        _random = new Random(seed);
        _habits = ContactHabits.Of(system);
        _ranges = [.. system.Inputs.Select(input => input.Range)];
        _readings = Of(input => input.Range.Maximum - input.Range.Minimum > 1 && !input.Name.EndsWith(".setting", StringComparison.Ordinal));
        _contacts = Of(ContactHabits.IsContact);
        _switches = Of(input => input.Sort == Sort.Boolean && !ContactHabits.IsContact(input));
        _restarts = Of(input => input.Name.EndsWith(".restart", StringComparison.Ordinal));
        _aborts = Of(input => input.Name.EndsWith(".abort", StringComparison.Ordinal));
        _resets = Of(input => input.Name.EndsWith(".reset", StringComparison.Ordinal));
        _seen = [.. system.Inputs.Select(input => ways.SelectMany(one => one.Segments).Select(segment => segment.Inputs[input.Index]).Distinct().Order().ToImmutableArray())];
        _scans = Scans().GetEnumerator();

        ImmutableArray<int> Of(Func<Variable, bool> isMeant) => [.. system.Inputs.Where(isMeant).Select(input => input.Index)];
    }

    /// <summary>Writes the inputs of the next scan; false at the end.</summary>
    /// <param name="inputs">Those of the scan before.</param>
    /// <param name="outputs">What came of them.</param>
    public bool Give(long[] inputs, long[] outputs)
    {
        (_inputs, _outputs) = (inputs, outputs);
        return _scans.MoveNext();
    }

    private IEnumerable<bool> Scans()
    {
        for (int round = 0; round < Rounds; round++)
        {
            _random = _isUnsteady ? new Random(_seed) : _random;
            foreach (TraceSegment segment in _way.Segments)
            {
                for (int scan = 0; scan < segment.Scans; scan++)
                {
                    segment.Inputs.CopyTo(_inputs);
                    yield return true;
                }
            }

            Press(_switches, 0);
            for (int phase = 0; phase < PhasesOfRound; phase++)
            {
                foreach (bool scan in Phase())
                {
                    yield return scan;
                }
            }

            foreach (ImmutableArray<int> command in (ImmutableArray<int>[])[_aborts, _resets])
            {
                Press(command, 1);
                yield return true;
                Press(command, 0);
                for (int scan = 0; scan < ScansOfRest; scan++)
                {
                    Follow();
                    yield return true;
                }
            }
        }
    }

    private IEnumerable<bool> Phase()
    {
        foreach (int reading in _readings)
        {
            int kind = _random.Next(10);
            _inputs[reading] = kind < 4 ? _seen[reading][_random.Next(_seen[reading].Length)]
                : kind < 6 ? _inputs[reading]
                : _random.NextInt64(_ranges[reading].Minimum, _ranges[reading].Maximum + 1);
        }

        if (_contacts.Length > 0 && _random.Next(4) == 0)
        {
            int contact = _contacts[_random.Next(_contacts.Length)];
            _inputs[contact] = 1 - _inputs[contact];
        }

        int[] answering = [.. _contacts.Where(contact => _habits.Output[contact] >= 0)];
        int flickers = _isUnsteady && answering.Length > 0 ? answering[_random.Next(answering.Length)] : -1;
        int scans = PhaseScans[_random.Next(PhaseScans.Length)];
        int moving = _random.Next(3);
        int every = 50 << _random.Next(4);
        long[] about = [.. _inputs];
        long direction = _random.Next(2) == 0 ? 1 : -1;
        for (int scan = 1; scan <= scans; scan++)
        {
            if (moving > 0 && scan % every == 0)
            {
                foreach (int reading in _readings)
                {
                    long span = _ranges[reading].Maximum - _ranges[reading].Minimum;
                    long near = Math.Max(1, span / 60);
                    long moved = moving == 1 ? about[reading] + _random.NextInt64(-near, near + 1) : _inputs[reading] + (direction * _random.NextInt64(0, Math.Max(2, span / 400)));
                    _inputs[reading] = Math.Clamp(moved, _ranges[reading].Minimum, _ranges[reading].Maximum);
                }
            }

            if (scan % ScansToFollow == 0)
            {
                Follow();
            }

            if (flickers >= 0)
            {
                _inputs[flickers] = scan / ScansOfFlicker % 2;
            }

            Press(_restarts, scan % ScansToRestart == 0 ? 1 : 0);
            yield return true;
        }

        Press(_restarts, 0);
    }

    /// <summary>Motors run and valves stand as they are told.</summary>
    private void Follow()
    {
        foreach (int contact in _contacts)
        {
            if (_habits.Output[contact] is >= 0 and int output)
            {
                _inputs[contact] = _outputs[output] != 0 != _habits.IsInverse[contact] ? 1 : 0;
            }
        }
    }

    private void Press(ImmutableArray<int> switches, long value)
    {
        foreach (int one in switches)
        {
            _inputs[one] = value;
        }
    }
}
