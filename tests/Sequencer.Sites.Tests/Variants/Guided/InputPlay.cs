using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Traces;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// What the inputs do in an episode: each has a temper drawn at its beginning (it stays, takes one other value, goes from
/// value to value, drifts, or is pressed now and then), and holds each value for a random while, mostly short, at times long.
/// Values are those at which the program tips. Nothing is allocated after the constructor.
/// </summary>
internal sealed class InputPlay
{
    private const int LongestPress = 3;

    /// <summary>Of the inputs one up to this share does something in an episode: too much at once only trips everything.</summary>
    private const double LiveliestShare = 0.7;

    private readonly ImmutableArray<TraceInput> _inputs;
    private readonly ImmutableArray<long[]> _values;
    private readonly Random _random;
    private readonly Temper[] _tempers;
    private readonly long[] _pace;
    private readonly long[] _drift;
    private readonly long[] _due;
    private long _next;

    public InputPlay(TransitionSystem system, ImmutableArray<TraceInput> inputs, Random random)
    {
        _inputs = inputs;
        _values = ComparedValues.Of(system, inputs);
        _random = random;
        _tempers = new Temper[inputs.Length];
        _pace = new long[inputs.Length];
        _drift = new long[inputs.Length];
        _due = new long[inputs.Length];
    }

    private enum Temper
    {
        Stays,
        TakesOne,
        Changes,
        Drifts,
        IsPressed,
    }

    /// <summary>Draws the tempers; what is pressed is let go.</summary>
    public void Begin(long scan, long[] values, Followers followers)
    {
        double lively = Math.Exp(_random.NextDouble() * Math.Log(Math.Max(2, LiveliestShare * _inputs.Length))) / _inputs.Length;
        bool wasLively = false;
        for (int index = 0; index < _inputs.Length; index++)
        {
            TraceInput input = _inputs[index];
            values[index] = input.IsMomentary ? input.Rest : values[index];
            // What is demanded in manual says nothing without manual.
            bool isPartner = index > 0 && input.Kind == TraceInputKind.Manual && _inputs[index - 1].Tag == input.Tag;
            bool isLively = isPartner ? wasLively : _random.NextDouble() < lively;
            _tempers[index] = followers.Leads(index) || !isLively ? Temper.Stays : Draw(input, ref values[index]);
            wasLively = isLively;
            _pace[index] = Long(input.Kind == TraceInputKind.Power ? 300 : 3, 4000);
            _drift[index] = (_random.Next(2) == 0 ? -1 : 1) * Long(1, 30);
            _due[index] = _tempers[index] == Temper.Stays ? long.MaxValue : scan + Long(1, _pace[index] + 1);
        }

        _next = _due.Min();
    }

    /// <summary>Before a scan: whatever is due changes.</summary>
    public void Play(long scan, long[] values)
    {
        if (scan < _next)
        {
            return;
        }

        _next = long.MaxValue;
        for (int index = 0; index < _due.Length; index++)
        {
            if (_due[index] <= scan)
            {
                _due[index] = Change(index, scan, ref values[index]);
            }

            _next = Math.Min(_next, _due[index]);
        }
    }

    /// <summary>A length whose logarithm is even between the two.</summary>
    public long Long(long least, long most) => (long)(least * Math.Exp(_random.NextDouble() * Math.Log((double)most / least)));

    private long Change(int index, long scan, ref long value)
    {
        TraceInput input = _inputs[index];
        switch (_tempers[index])
        {
            case Temper.TakesOne:
                value = Other(index, value);
                return long.MaxValue;
            case Temper.Drifts:
                long moved = value + _drift[index];
                _drift[index] = input.Variable.Range.Contains(moved) && _random.Next(100) > 0 ? _drift[index] : -_drift[index];
                value = Math.Clamp(moved, input.Variable.Range.Minimum, input.Variable.Range.Maximum);
                return scan + 1 + (_pace[index] / 30);
            case Temper.IsPressed when value == input.Rest:
                value = Other(index, value);
                return scan + 1 + _random.Next(LongestPress);
            case Temper.IsPressed:
                value = input.Rest;
                return scan + Long(1 + (_pace[index] / 4), 2 + (_pace[index] * 4));
            default:
                value = Other(index, value);
                return scan + Long(1 + (_pace[index] / 16), 2 + (_pace[index] * 4));
        }
    }

    /// <summary>Another of the values worth taking; now and then any.</summary>
    private long Other(int index, long value)
    {
        long[] values = _values[index];
        if (values.Length == 2)
        {
            return value == values[0] ? values[1] : values[0];
        }

        IntegerRange range = _inputs[index].Variable.Range;
        return _random.Next(10) == 0 ? range.Minimum + (long)(_random.NextDouble() * (range.Maximum - range.Minimum)) : values[_random.Next(values.Length)];
    }

    private Temper Draw(TraceInput input, ref long value)
    {
        int chance = _random.Next(100);
        switch (input.Kind)
        {
            case TraceInputKind.Command or TraceInputKind.Answer or TraceInputKind.Power:
                return Temper.IsPressed;
            case TraceInputKind.Reading:
                return chance < 40 ? Temper.TakesOne : chance < 75 ? Temper.Changes : Temper.Drifts;
            default:
                value = chance < 30 ? input.Rest : value;
                return chance < 30 ? Temper.Stays : chance < 65 ? Temper.TakesOne : Temper.Changes;
        }
    }
}
