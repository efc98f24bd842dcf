using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant.Instruments;

/// <summary>All transmitters of a plant, from what is true to the currents at the controller's terminals.</summary>
internal sealed class TransmitterBank
{
    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly Noise _noise;
    private readonly SignalChains _signals;
    private readonly ImmutableArray<Func<double>> _measured;

    /// <summary>What is truly so, in base units, and what reaches the sensors.</summary>
    private readonly double[] _actual;
    private readonly double[] _seen;

    /// <summary>The tank that each transmitter sits in; -1 for none.</summary>
    private readonly ImmutableArray<int> _probeTanks;
    private readonly ImmutableArray<int> _seeOtherwise;

    private readonly List<int> _failed = [];

    /// <summary>mA of those that have failed, at the last reading.</summary>
    private readonly double[] _before;

    /// <summary>Whose current arrives at the terminals of each transmitter, and those currents while some are swapped.</summary>
    private readonly int[] _wiredTo;
    private readonly double[] _terminals;
    private bool _isSwapped;
    private long _reading;

    public TransmitterBank(PlantParts parts, PlantMotion motion, MeasuredValues values, ImmutableArray<SampleLoop> loops, ulong seed)
    {
        _parts = parts;
        _motion = motion;
        ImmutableArray<TransmitterDescription> described = parts.Model.Transmitters;
        _noise = new Noise(seed, described.Length);
        _measured = [.. described.Select(values.Of)];
        _actual = Lanes.Of(_measured, measured => measured(), 0.0);
        _seen = [.. _actual];
        _signals = new SignalChains(described, _actual);
        _probeTanks = [.. described.Select(one => parts.Tank(one.In))];
        Instruments = [.. described.Select((one, index) => new AnalogueInstrument(one, loops.FirstOrDefault(loop => loop.Description.Name == one.In), _actual[index]))];
        _seeOtherwise = [.. Enumerable.Range(0, described.Length).Where(index => Instruments[index].SeesOtherwise)];
        _before = new double[described.Length];
        _terminals = new double[described.Length];
        _wiredTo = [.. Enumerable.Range(0, described.Length)];
    }

    public ImmutableArray<AnalogueInstrument> Instruments { get; }

    /// <summary>The current at the terminals that are meant for each transmitter, mA.</summary>
    public ReadOnlySpan<double> Milliamps => _isSwapped ? _terminals : _signals.Milliamps[..Instruments.Length];

    /// <summary>What is truly so where a transmitter measures, as a share of its range.</summary>
    public double TrueShare(int transmitter)
    {
        TransmitterDescription described = Instruments[transmitter].Description;
        return (_actual[transmitter] - described.Low) / (described.High - described.Low);
    }

    /// <summary>Something fails in a transmitter, or is mended.</summary>
    public void Fail(int transmitter, TransmitterFault fault, bool failed)
    {
        AnalogueInstrument instrument = Instruments[transmitter];
        instrument.Fail(fault, failed);
        _signals.SetLag(transmitter, instrument.LagSeconds);
        _signals.Wandered[transmitter] = instrument.Wandered(_signals.Wandered[transmitter], 0.0);
        _failed.Clear();
        _failed.AddRange(Enumerable.Range(0, Instruments.Length).Where(index => Instruments[index].HasFailed));
    }

    /// <summary>Lands the wires of two transmitters at each other's terminals, or where they belong.</summary>
    public void Swap(string one, string other, bool swapped)
    {
        int first = Place(one);
        int second = Place(other);
        (_wiredTo[first], _wiredTo[second]) = swapped ? (second, first) : (first, second);
        _isSwapped = !_wiredTo.SequenceEqual(Enumerable.Range(0, _wiredTo.Length));
        Land();
    }

    /// <summary>Reads all at the motion's time, that many seconds after the last reading.</summary>
    public void Advance(double seconds)
    {
        _reading++;
        for (int index = 0; index < _measured.Length; index++)
        {
            _actual[index] = _measured[index]();
        }

        _actual.CopyTo(_seen, 0);
        foreach (int index in _seeOtherwise)
        {
            double tankLitres = _probeTanks[index] >= 0 ? _motion.Now[_parts.Layout.Volume(_probeTanks[index])] : double.PositiveInfinity;
            _seen[index] = Instruments[index].Seen(_actual[index], tankLitres, _motion.Time);
        }

        Span<double> milliamps = _signals.Milliamps;
        foreach (int index in _failed)
        {
            _signals.Wandered[index] = Instruments[index].Wandered(_signals.Wandered[index], seconds);
            _before[index] = milliamps[index];
        }

        _signals.Advance(_seen, _motion.Time, seconds, _noise.Normal(_reading));
        foreach (int index in _failed)
        {
            milliamps[index] = Instruments[index].Current(_signals.Shown[index], _before[index]);
        }

        if (_isSwapped)
        {
            Land();
        }
    }

    /// <summary>Brings the currents to the terminals that they are wired to.</summary>
    private void Land()
    {
        for (int index = 0; index < _terminals.Length; index++)
        {
            _terminals[index] = _signals.Milliamps[_wiredTo[index]];
        }
    }

    private int Place(string tag) => Instruments.Select(instrument => instrument.Description.Tag).ToList().IndexOf(tag);
}
