using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant.Instruments;

/// <summary>All instruments of a plant, read once after each move of it.</summary>
internal sealed class InstrumentPanel
{
    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly Noise _noise;
    private readonly bool[] _operated;
    private readonly Feedbacks _feedbacks;
    private readonly ImmutableArray<ContactInstrument> _switchContacts;
    private readonly ImmutableArray<ContactInstrument> _handContacts;
    private readonly ImmutableArray<Func<double>> _measured;
    private readonly ImmutableArray<Func<double>> _switched;
    private readonly List<MarkedShaft> _shafts = [];

    /// <summary>The tank that each transmitter sits in; -1 for none.</summary>
    private readonly ImmutableArray<int> _probeTanks;

    /// <summary>Whose current arrives at the terminals of each transmitter.</summary>
    private readonly int[] _wiredTo;

    private readonly SignalChains _signals;

    /// <summary>What is truly so, in base units, then what reaches the sensors.</summary>
    private readonly double[] _actual;
    private readonly double[] _seen;

    private readonly ImmutableArray<int> _seeOtherwise;
    private readonly List<int> _failed = [];

    /// <summary>mA of those that have failed, at the last reading.</summary>
    private readonly double[] _before;

    private readonly double[] _terminals;
    private bool _isSwapped;

    private long _reading;

    public InstrumentPanel(PlantParts parts, PlantMotion motion, ulong seed)
    {
        _parts = parts;
        _motion = motion;
        PlantModel model = parts.Model;
        _noise = new Noise(seed, model.Transmitters.Length);
        _operated = new bool[model.HandSwitches.Length];
        Loops = [.. model.SampleLoops.Select(loop => new SampleLoop(loop, parts.Drive(loop.Pump), parts.Tanks[parts.Tank(loop.From)]))];
        _measured = [.. model.Transmitters.Select(described => Seen(described))];
        _switched = [.. model.Switches.Select(described => described.Measures is Measured.Turns ? Turned(described) : Watched(described))];
        _probeTanks = [.. model.Transmitters.Select(described => parts.Tank(described.In))];
        _actual = Lanes.Of(_measured, measured => measured(), 0.0);
        _seen = [.. _actual];
        _signals = new SignalChains(model.Transmitters, _actual);
        Transmitters = [.. model.Transmitters.Select((described, index) => Transmitter(described, index))];
        _seeOtherwise = [.. Enumerable.Range(0, Transmitters.Length).Where(index => Transmitters[index].SeesOtherwise)];
        _terminals = new double[Transmitters.Length];
        _before = new double[Transmitters.Length];
        _wiredTo = [.. Enumerable.Range(0, Transmitters.Length)];
        Switches = [.. model.Switches.Select(described => new ThresholdSwitch(described))];
        _feedbacks = new Feedbacks(parts.Drives, () => motion.Time, Changed);
        _switchContacts = [.. Switches.Select(threshold => new ContactInstrument(threshold.Description.Tag, threshold.Description.NormallyClosed, () => threshold.IsActing, Changed))];
        _handContacts = [.. model.HandSwitches.Select((described, index) => new ContactInstrument(described.Tag, described.NormallyClosed, () => _operated[index], Changed))];
        Contacts = [.. _feedbacks.All, .. _switchContacts, .. _handContacts];
        ReadSwitches();
    }

    public ImmutableArray<SampleLoop> Loops { get; }

    public ImmutableArray<AnalogueInstrument> Transmitters { get; }

    public ImmutableArray<ThresholdSwitch> Switches { get; }

    /// <summary>Running and limit-switch feedbacks, then switches, then hand switches.</summary>
    public ImmutableArray<ContactInstrument> Contacts { get; }

    /// <summary>Grows whenever a contact may have turned.</summary>
    public long ContactChanges { get; private set; }

    /// <summary>The current at the terminals that are meant for each transmitter, mA.</summary>
    public ReadOnlySpan<double> Milliamps => _isSwapped ? _terminals : _signals.Milliamps[..Transmitters.Length];

    /// <summary>What is truly so where a transmitter measures, as a share of its range.</summary>
    public double TrueShare(int transmitter)
    {
        TransmitterDescription described = Transmitters[transmitter].Description;
        return (_actual[transmitter] - described.Low) / (described.High - described.Low);
    }

    /// <summary>Something fails in a transmitter, or is mended.</summary>
    public void Fail(int transmitter, TransmitterFault fault, bool failed)
    {
        AnalogueInstrument instrument = Transmitters[transmitter];
        instrument.Fail(fault, failed);
        _signals.SetLag(transmitter, instrument.LagSeconds);
        _signals.Wandered[transmitter] = instrument.Wandered(_signals.Wandered[transmitter], 0.0);
        _failed.Clear();
        _failed.AddRange(Enumerable.Range(0, Transmitters.Length).Where(index => Transmitters[index].HasFailed));
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

    public void Operate(int handSwitch, bool operated)
    {
        _operated[handSwitch] = operated;
        _handContacts[handSwitch].Look();
    }

    /// <summary>Reads everything at the motion's time, that many seconds after the last reading.</summary>
    public void Advance(double seconds)
    {
        _reading++;
        foreach (SampleLoop loop in Loops)
        {
            loop.Advance(_motion.Time, seconds, Volume(loop.Tank.Index));
        }

        foreach (MarkedShaft shaft in _shafts)
        {
            shaft.Advance(_motion.Time, seconds);
        }

        for (int index = 0; index < _measured.Length; index++)
        {
            _actual[index] = _measured[index]();
        }

        _actual.CopyTo(_seen, 0);
        foreach (int index in _seeOtherwise)
        {
            double tankLitres = _probeTanks[index] >= 0 ? Volume(_probeTanks[index]) : double.PositiveInfinity;
            _seen[index] = Transmitters[index].Seen(_actual[index], tankLitres, _motion.Time);
        }

        ReadTransmitters(seconds);
        ReadSwitches();
        _feedbacks.Look();
    }

    private void ReadTransmitters(double seconds)
    {
        Span<double> milliamps = _signals.Milliamps;
        foreach (int index in _failed)
        {
            _signals.Wandered[index] = Transmitters[index].Wandered(_signals.Wandered[index], seconds);
            _before[index] = milliamps[index];
        }

        _signals.Advance(_seen, _motion.Time, seconds, _noise.Normal(_reading));
        foreach (int index in _failed)
        {
            milliamps[index] = Transmitters[index].Current(_signals.Shown[index], _before[index]);
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

    private int Place(string tag) => Transmitters.Select(transmitter => transmitter.Description.Tag).ToList().IndexOf(tag);

    private void Changed() => ContactChanges++;

    private double Volume(int tank) => _motion.Now[_parts.Layout.Volume(tank)];

    private void ReadSwitches()
    {
        for (int index = 0; index < Switches.Length; index++)
        {
            if (Switches[index].Advance(_switched[index]()))
            {
                _switchContacts[index].Look();
            }
        }
    }

    private Func<double> Seen(TransmitterDescription described)
    {
        if (described.Steady is not { } steady)
        {
            return described.Measures is Measured.Turbidity ? Cloudiness(described.In, described.PerSuspended) : Actual(described.Measures, described.In);
        }

        return described.Measures is Measured.Pressure ? OfPump(described.In, steady) : () => steady;
    }

    private Func<double> Watched(SwitchDescription described) =>
        described.AtFullSpeed is { } pressure ? OfPump(described.In, pressure)
        : described.Measures is Measured.Turbidity ? Cloudiness(described.In, described.PerSuspended)
        : Actual(described.Measures, described.In);

    private Func<double> OfPump(string tag, double pressureAtFullSpeed)
    {
        Drive pump = _parts.Drive(tag);
        return () => pressureAtFullSpeed * pump.Effect(_motion.Time);
    }

    /// <summary>In proportion to the solids in the water (our own simplification: it depends on their size too).</summary>
    private Func<double> Cloudiness(string place, double perSuspended)
    {
        int line = _parts.Line(place);
        int tank = line >= 0 ? _parts.Pipes[line].FromTank : _parts.Tank(place);
        if (_parts.Settler(tank) is var settler and >= 0)
        {
            TankSettling settling = _parts.Settlers[settler];
            DrawPoint point = line >= 0 ? _parts.Pipes[line].Description.Draws : DrawPoint.Surface;
            return () => perSuspended * settling.SolidsDrawn(point, _motion.Now);
        }

        int mixed = _parts.Layout.Mixed(tank);
        int[] weighed = [.. Enumerable.Range(0, _parts.Contents.Count).Where(_parts.Contents.IsWeighed)];
        return () =>
        {
            double grams = 0.0;
            foreach (int content in weighed)
            {
                grams += Math.Max(0.0, _motion.Now[mixed + content]);
            }

            return perSuspended * grams / Volume(tank);
        };
    }

    private Func<double> Turned(SwitchDescription described)
    {
        MarkedShaft shaft = new(_parts.Drive(described.In), described.TurnSeconds);
        _shafts.Add(shaft);
        return () => shaft.Turned;
    }

    /// <summary>Reads the true value, in base units, of what is measured at a place that the reader has checked to have it.</summary>
    private Func<double> Actual(Measured measures, string place)
    {
        SampleLoop? loop = Loops.FirstOrDefault(loop => loop.Description.Name == place);
        int tank = loop?.Tank.Index ?? _parts.Tank(place);
        int source = _parts.Source(place);
        int line = _parts.Line(place);
        DrumFilter? drum = _parts.Drums.FirstOrDefault(one => one.Description.Name == place);
        FilterPress? press = _parts.Presses.FirstOrDefault(one => one.Description.Name == place);
        SealWater? seal = _parts.SealWaters.FirstOrDefault(one => one.Description.Name == place);
        return measures switch
        {
            Measured.Temperature when seal is not null => () => seal.Celsius(_motion.Now),
            Measured.Flow when seal is not null => () => seal.Flow(_motion.Time),
            Measured.Pressure when press is not null => () => press.PressurePascals(_motion.Time, _motion.Now) / 1000.0,
            Measured.Flow when press is not null => () => _motion.Equations.Flows.Filtrate(press, _motion.Time, _motion.Now),
            Measured.Pressure when drum is not null => () => -drum.VacuumPascals(_motion.Now) / 1000.0,
            Measured.Flow when drum is not null => () => _motion.Equations.Flows.Filtrate(drum, _motion.Time, _motion.Now),
            Measured.Volume when tank < 0 => () => Math.Max(0.0, _parts.StoreLitres(source, _motion.Now)),
            Measured.Volume => () => Volume(tank),
            Measured.Level => () => _parts.Tanks[tank].LevelMetres(Volume(tank)),
            Measured.Ph => () => _motion.Ph(tank),
            Measured.Redox => () => _motion.Millivolts(tank),
            Measured.Conductivity => () => _motion.Conductivity(tank),
            Measured.Temperature => () => _motion.Now[_parts.Layout.Heat(tank)] / Volume(tank),
            _ when loop is not null => () => loop.FlowLitresPerSecond,
            _ => () => _motion.Equations.Flows.Of(line, _motion.Time, _motion.Now),
        };
    }

    private AnalogueInstrument Transmitter(TransmitterDescription described, int index)
    {
        SampleLoop? loop = Loops.FirstOrDefault(loop => loop.Description.Name == described.In);
        return new AnalogueInstrument(described, loop, _actual[index]);
    }
}
