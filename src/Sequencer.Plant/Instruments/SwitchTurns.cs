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
    private const double EventTolerance = 1e-8;

    /// <summary>Of a step; a value that turns twice within one and is past a threshold only between is not seen.</summary>
    private const int MostParts = 4;

    /// <summary>s; shorter steps are not parted, as many as an implicit method may take.</summary>
    private const double ShortestPart = 0.25;

    /// <summary>Of a part: so far from its ends it is looked whether a value rises or falls there.</summary>
    private const double Apart = 1e-3;

    private readonly PlantMotion _motion;
    private readonly Instant _looked;
    private readonly ImmutableArray<ThresholdSwitch> _switches;
    private readonly ImmutableArray<Func<double>> _values;
    private readonly bool[] _foreseen;
    private readonly List<(double Time, int Index)> _ahead = [];

    /// <summary>What each switch watches where a part begins, a little later, a little before it ends and where it ends.</summary>
    private double[] _atStart;
    private double[] _atEnd;
    private readonly double[] _afterStart;
    private readonly double[] _beforeEnd;

    /// <param name="motion">of the plant</param>
    /// <param name="switches">those that are followed</param>
    /// <param name="values">what each watches, at <paramref name="looked"/></param>
    /// <param name="looked">is moved about within steps</param>
    public SwitchTurns(PlantMotion motion, ImmutableArray<ThresholdSwitch> switches, ImmutableArray<Func<double>> values, Instant looked)
    {
        _motion = motion;
        _switches = switches;
        _values = values;
        _looked = looked;
        _foreseen = new bool[switches.Length];
        _atStart = new double[switches.Length];
        _atEnd = new double[switches.Length];
        _afterStart = new double[switches.Length];
        _beforeEnd = new double[switches.Length];
        if (switches.Length > 0)
        {
            motion.Stepped += Find;
            motion.Cut += Forget;
            FindAtOnce(motion.Time);
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
        double length = _motion.End - from;
        FindAtOnce(from);
        int parts = (int)Math.Clamp(Math.Ceiling(length / ShortestPart), 1.0, MostParts);
        for (int part = 1; part <= parts; part++)
        {
            double to = part == parts ? _motion.End : _motion.Start + (length * part / parts);
            double apart = Apart * (to - from);
            Read(from + apart, _afterStart);
            Read(to - apart, _beforeEnd);
            Read(to, _atEnd);
            for (int index = 0; index < _switches.Length; index++)
            {
                Find(index, from, to);
            }

            (_atStart, _atEnd) = (_atEnd, _atStart);
            from = to;
        }

        _ahead.Sort();
        FindNext();
    }

    /// <summary>What drives a value may have changed where a step begins.</summary>
    private void FindAtOnce(double time)
    {
        Read(time, _atStart);
        for (int index = 0; index < _switches.Length; index++)
        {
            if (Beyond(index, _atStart[index]) >= 0.0)
            {
                Foresee(index, time);
            }
        }
    }

    private void Find(int index, double from, double to)
    {
        if (Beyond(index, _atEnd[index]) >= 0.0)
        {
            Foresee(index, Crossing(index, from, to));
        }
        else if (Passing(index, from, to) is { } passing)
        {
            Foresee(index, Crossing(index, from, passing));
            if (Beyond(index, _atEnd[index]) >= 0.0)
            {
                Foresee(index, Crossing(index, passing, to));
            }
        }
    }

    /// <summary>A time between, at which a switch is to turn although where the part begins and ends it is not; null where there is none.</summary>
    private double? Passing(int index, double from, double to)
    {
        double apart = Apart * (to - from);
        double atStart = Beyond(index, _atStart[index]);
        double atEnd = Beyond(index, _atEnd[index]);
        double rise = (Beyond(index, _afterStart[index]) - atStart) / apart;
        double fall = (Beyond(index, _beforeEnd[index]) - atEnd) / apart;
        if (!(rise > 0.0 && fall > 0.0))
        {
            return null;
        }

        // A curve that bends one way stays below its tangents: mostly not even these come so far.
        double meet = (atEnd - atStart + (fall * (to - from))) / (rise + fall);
        return atStart + (rise * meet) >= 0.0 ? FirstBeyond(index, from, to) : null;
    }

    /// <summary>Towards the top of a curve that rises and then falls, by golden sections (Kiefer, Proc. Am. Math. Soc. 4 (1953) 502), as far as the first time at which it is beyond.</summary>
    private double? FirstBeyond(int index, double low, double high)
    {
        const double Golden = 0.61803398874989485;
        while (high - low > EventTolerance)
        {
            double early = high - (Golden * (high - low));
            double late = low + (Golden * (high - low));
            double atEarly = BeyondAt(index, early);
            double atLate = BeyondAt(index, late);
            if (Math.Max(atEarly, atLate) >= 0.0)
            {
                return atEarly >= 0.0 ? early : late;
            }

            (low, high) = atEarly >= atLate ? (low, late) : (early, high);
        }

        return null;
    }

    private double Crossing(int index, double from, double to) => RootLocation.Find(time => BeyondAt(index, time), from, to, EventTolerance);

    private void Foresee(int index, double time)
    {
        _foreseen[index] = !_foreseen[index];
        _ahead.Add((time, index));
    }

    private void Read(double time, double[] values)
    {
        _motion.Look(time, _looked);
        for (int index = 0; index < values.Length; index++)
        {
            values[index] = _values[index]();
        }
    }

    private double BeyondAt(int index, double time)
    {
        _motion.Look(time, _looked);
        return Beyond(index, _values[index]());
    }

    /// <summary>From nothing on a switch turns.</summary>
    private double Beyond(int index, double value) => _switches[index].BeyondTurn(value, _foreseen[index]);

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
