using System.Collections.Immutable;
using Sequencer.Plant.Integration;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// When the switches turn whose values follow from the state: found within each step of the equations, from its continuous extension, as soon as the step is
/// taken. A scan sees those whose time has come; what a step found beyond a command or a fault is found anew.
/// </summary>
internal sealed class SwitchTurns
{
    /// <summary>s; how exactly a turn is found.</summary>
    private const double EventTolerance = 1e-9;

    /// <summary>Of a step, each looked at at its end: a value that passes the threshold and comes back within one is not seen.</summary>
    private const int MostParts = 4;

    /// <summary>s; shorter steps are not parted, as many as an implicit method may take.</summary>
    private const double ShortestPart = 0.25;

    private readonly PlantMotion _motion;
    private readonly Moment _looked;
    private readonly ImmutableArray<ThresholdSwitch> _switches;
    private readonly ImmutableArray<Func<double>> _values;
    private readonly bool[] _foreseen;
    private readonly List<(double Time, int Index)> _ahead = [];

    /// <param name="motion">of the plant</param>
    /// <param name="switches">those that are followed</param>
    /// <param name="values">what each watches, at <paramref name="looked"/></param>
    /// <param name="looked">is moved about within steps</param>
    public SwitchTurns(PlantMotion motion, ImmutableArray<ThresholdSwitch> switches, ImmutableArray<Func<double>> values, Moment looked)
    {
        _motion = motion;
        _switches = switches;
        _values = values;
        _looked = looked;
        _foreseen = new bool[switches.Length];
        if (switches.Length > 0)
        {
            motion.Stepped += Find;
            motion.Cut += Forget;
            motion.Look(motion.Time, looked);
            FindAtOnce();
            FindNext();
            Advance(motion.Time);
        }
    }

    /// <summary>s; when the next switch turns, as far as steps have gone.</summary>
    public double Next { get; private set; } = double.PositiveInfinity;

    /// <summary>Turns those switches whose time has come.</summary>
    public void Advance(double time)
    {
        if (time < Next)
        {
            return;
        }

        int due = 0;
        for (; due < _ahead.Count && _ahead[due].Time <= time; due++)
        {
            _switches[_ahead[due].Index].Turn();
        }

        _ahead.RemoveRange(0, due);
        FindNext();
    }

    private void Find()
    {
        double from = _motion.Start;
        _motion.Look(from, _looked);
        FindAtOnce();
        double length = _motion.End - from;
        int parts = (int)Math.Clamp(Math.Ceiling(length / ShortestPart), 1.0, MostParts);
        for (int part = 1; part <= parts; part++)
        {
            double to = part == parts ? _motion.End : _motion.Start + (length * part / parts);
            FindBetween(from, to);
            from = to;
        }

        _ahead.Sort();
        FindNext();
    }

    /// <summary>At the moment looked at: what drives a value may have changed at the step's beginning.</summary>
    private void FindAtOnce()
    {
        for (int index = 0; index < _switches.Length; index++)
        {
            if (Beyond(index) >= 0.0)
            {
                Foresee(index, _looked.Time);
            }
        }
    }

    private void FindBetween(double from, double to)
    {
        _motion.Look(to, _looked);
        for (int index = 0; index < _switches.Length; index++)
        {
            if (Beyond(index) >= 0.0)
            {
                int turning = index;
                Foresee(index, RootLocation.Find(time => BeyondAt(turning, time), from, to, EventTolerance));
                _motion.Look(to, _looked);
            }
        }
    }

    private void Foresee(int index, double time)
    {
        _foreseen[index] = !_foreseen[index];
        _ahead.Add((time, index));
    }

    private double BeyondAt(int index, double time)
    {
        _motion.Look(time, _looked);
        return Beyond(index);
    }

    /// <summary>From nothing on a switch turns.</summary>
    private double Beyond(int index) => _switches[index].BeyondTurn(_values[index](), _foreseen[index]);

    private void Forget()
    {
        _ahead.Clear();
        FindNext();
        for (int index = 0; index < _switches.Length; index++)
        {
            _foreseen[index] = _switches[index].IsActing;
        }
    }

    private void FindNext() => Next = _ahead.Count > 0 ? _ahead[0].Time : double.PositiveInfinity;
}
