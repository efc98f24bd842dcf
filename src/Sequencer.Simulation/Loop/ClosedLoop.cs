using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Plant;
using Sequencer.Simulation.Metadata;
using Sequencer.Text;

namespace Sequencer.Simulation.Loop;

/// <summary>
/// Controller and plant in lockstep: a scan reads the plant's terminals, steps the controller, writes
/// its outputs and lets one scan period pass. Between <see cref="Scan"/> and <see cref="Advance"/> the
/// loop shows one consistent moment: this scan's inputs, outputs and definitions, the states after it,
/// and the plant as it was read. Nothing is allocated in a scan.
/// </summary>
public sealed class ClosedLoop
{
    private const string PowerReturned = "power.returned";

    private readonly Stepper _stepper;
    private readonly IPlant _plant;
    private readonly AnalogueBinding[] _analogues;
    private readonly RealBinding[] _reals;
    private readonly Wiring _wiring;
    private readonly LoopNames _names;
    private readonly int _powerReturned;
    private readonly double _scanSeconds;
    private readonly long[] _dead;
    private readonly long[] _written;
    private bool _isWritten;
    private long _seenChanges = -1;
    private bool _wasPowered = true;
    private InputScript? _script;

    private ClosedLoop(Stepper stepper, IPlant plant, SiteMetadata site, Wiring wiring)
    {
        _stepper = stepper;
        _plant = plant;
        _wiring = wiring;
        _analogues = [.. wiring.Analogues];
        _reals = [.. wiring.Reals];
        _names = new LoopNames(stepper, plant, site);
        _powerReturned = stepper.System.Inputs.FirstOrDefault(input => input.Name == PowerReturned)?.Index ?? -1;
        _scanSeconds = stepper.System.ScanMilliseconds / 1000.0;
        _dead = new long[Math.Max(stepper.Outputs.Length, stepper.Observed.Length)];
        _written = new long[stepper.Outputs.Length];
        Site = site;
        Units = UnitPlaces.Of(stepper.System);
    }

    public SiteMetadata Site { get; }

    public TransitionSystem System => _stepper.System;

    public IPlant Plant => _plant;

    public ImmutableArray<UnitPlaces> Units { get; }

    /// <summary>The scan that was done last, or is about to be done, from 0.</summary>
    public long ScanNumber { get; private set; }

    public double Seconds => ScanNumber * _scanSeconds;

    /// <summary>When a scan is, in seconds since the start.</summary>
    public double SecondsAt(long scan) => scan * System.ScanMilliseconds / 1000.0;

    public bool Powered { get; private set; } = true;

    /// <summary>
    /// Joins a controller to a plant; null, with diagnostics, where a tag is missing. The stepper must
    /// have been made with <see cref="Observed"/>.
    /// </summary>
    public static ClosedLoop? Join(Stepper stepper, IPlant plant, SiteMetadata site, SourceSpan place, DiagnosticBag diagnostics)
    {
        DiagnosticBag found = new();
        Wiring wiring = Wiring.Join(stepper.System, plant, site, place, found);
        ClosedLoop loop = new(stepper, plant, site, wiring);
        loop.SetDefaults(place, found);
        diagnostics.AddRange(found.InOrder());
        return found.HasErrors ? null : loop;
    }

    /// <summary>
    /// The expressions that a stepper must observe for a loop: every alarm, in order, then every
    /// definition that a signal of the site is named by, then every requirement.
    /// </summary>
    public static ImmutableArray<Expression> Observed(TransitionSystem system, SiteMetadata site) => LoopNames.Observed(system, site);

    /// <summary>Whether an input is the operator's to set, not the plant's.</summary>
    public bool IsOperatorInput(int input) => _wiring.OperatorOwned[input] && input != _powerReturned;

    public void SetInput(int input, long value) => _stepper.Inputs[input] = value;

    public long Input(int input) => _stepper.Inputs[input];

    public long State(int place) => _stepper.States[place];

    public bool OutputOn(int output) => Powered && _stepper.Outputs[output] != 0;

    public bool AlarmRaised(int alarm) => Alarms[alarm] != 0;

    /// <summary>All alarms of this scan, in order: 1 where it is raised.</summary>
    public ReadOnlySpan<long> Alarms => (Powered ? _stepper.Observed : _dead).AsSpan(0, System.Alarms.Length);

    /// <summary>All values of one origin in the program, in steps of their resolution: the array that <see cref="ValueSource.Place"/> points into.</summary>
    public ReadOnlySpan<long> Values(ValueOrigin origin) => origin switch
    {
        ValueOrigin.Input => _stepper.Inputs,
        ValueOrigin.State => _stepper.States,
        ValueOrigin.Output => Powered ? _stepper.Outputs : _dead.AsSpan(0, _stepper.Outputs.Length),
        ValueOrigin.Observed => _stepper.Observed,
        _ => throw new ArgumentOutOfRangeException(nameof(origin), origin, "the plant's values are no places in an array"),
    };

    /// <summary>Whether no value that <see cref="IsStill"/> can differ from what it was in the scan before.</summary>
    internal bool KeptStill => _stepper.KeptStill;

    /// <summary>Other values may be still than before where this has grown.</summary>
    internal long StillVersion => _stepper.StillVersion;

    /// <summary>Whether a value mostly stays from scan to scan, so that <see cref="KeptStill"/> tells of it.</summary>
    internal bool IsStill(ValueOrigin origin, int place) => origin switch
    {
        ValueOrigin.Input => _stepper.IsStillInput(place),
        ValueOrigin.State => _stepper.IsStillState(place),
        ValueOrigin.Observed => _stepper.IsStillObserved(place),
        _ => false,
    };

    /// <summary>All requirements, in order: 0 where one does not hold in this scan.</summary>
    public ReadOnlySpan<long> Requirements => _stepper.Observed.AsSpan(_stepper.Observed.Length - System.Requirements.Length);

    /// <summary>Whether a requirement holds in this scan.</summary>
    public bool Keeps(int requirement) => Requirements[requirement] != 0;

    /// <summary>A named value: an input, state, output, definition or plant quantity; null where nothing is named so.</summary>
    public ValueSource? Find(string name) => _names.Find(name);

    /// <summary>Every name that <see cref="Find"/> knows.</summary>
    public IEnumerable<string> Names => _names.All;

    public double Value(ValueSource source) => source.Resolution * source.Origin switch
    {
        ValueOrigin.Input => _stepper.Inputs[source.Place],
        ValueOrigin.State => _stepper.States[source.Place],
        ValueOrigin.Output => Powered ? _stepper.Outputs[source.Place] : 0,
        ValueOrigin.Observed => _stepper.Observed[source.Place],
        ValueOrigin.PlantQuantity => _plant.Quantity(source.Place),
        _ => _plant.TotalValue(source.Place),
    };

    /// <summary>From now on the inputs are those of the script, and the plant stands still.</summary>
    internal void RunWithoutPlant(InputScript script) => _script = script;

    public void CutPower() => Powered = false;

    public void RestorePower() => Powered = true;

    /// <summary>Reads the plant, steps the controller unless its power is off, and writes the outputs.</summary>
    public void Scan()
    {
        if (Powered)
        {
            Read();
            _stepper.Step();
        }

        Write();
        _wasPowered = Powered;
    }

    /// <summary>Lets one scan period pass in the plant.</summary>
    public void Advance()
    {
        if (_script is null)
        {
            _plant.Advance(_scanSeconds);
        }

        ScanNumber++;
    }

    /// <summary>A plant does what it was told last, so only what is new is written.</summary>
    private void Write()
    {
        ReadOnlySpan<long> outputs = Values(ValueOrigin.Output);
        if (_isWritten && Powered == _wasPowered && outputs.SequenceEqual(_written))
        {
            return;
        }

        outputs.CopyTo(_written);
        _isWritten = true;
        foreach (Wire wire in _wiring.Outputs)
        {
            _plant.Command(wire.Plant, OutputOn(wire.Program));
        }

        foreach (SetpointWire wire in _wiring.Setpoints)
        {
            _plant.SetValue(wire.Plant, Powered ? wire.Share(_stepper.Outputs[wire.Program]) : 0);
        }
    }

    private void Read()
    {
        if (_script is not null)
        {
            _script.Set(ScanNumber, _stepper.Inputs);
            return;
        }

        ReadOnlySpan<double> currents = _plant.Milliamps;
        for (int index = 0; index < _analogues.Length; index++)
        {
            _analogues[index].Read(currents, _stepper.Inputs);
        }

        for (int index = 0; index < _reals.Length; index++)
        {
            _reals[index].Read(_plant, _stepper.Inputs);
        }

        long changes = _plant.ContactChanges;
        if (changes != _seenChanges)
        {
            _seenChanges = changes;
            foreach (Wire wire in _wiring.Contacts)
            {
                _stepper.Inputs[wire.Program] = _plant.Contact(wire.Plant) ? 1 : 0;
            }
        }

        if (_powerReturned >= 0)
        {
            _stepper.Inputs[_powerReturned] = _wasPowered ? 0 : 1;
        }
    }

    private void SetDefaults(SourceSpan place, DiagnosticBag diagnostics)
    {
        foreach (Variable input in System.Inputs)
        {
            if (!IsOperatorInput(input.Index))
            {
                continue;
            }

            _stepper.Inputs[input.Index] = Math.Clamp(0, input.Range.Minimum, input.Range.Maximum);
            if (input.Name.EndsWith(".setting", StringComparison.Ordinal))
            {
                SignalMetadata? parameter = Site.Signal(input.Name);
                if (parameter?.Default is not decimal value)
                {
                    diagnostics.Add(BindingDiagnostics.SettingWithoutDefault(place, input.Name[..^".setting".Length]));
                    continue;
                }

                _stepper.Inputs[input.Index] = (long)decimal.Round(value / parameter.Resolution);
            }
        }
    }
}
