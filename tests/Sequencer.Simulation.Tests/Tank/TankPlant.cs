using System.Collections.Immutable;
using Sequencer.Plant;
using Sequencer.Plant.Ledger;

namespace Sequencer.Simulation.Tests.Tank;

/// <summary>The smallest plant worth controlling: a tank that is filled, dosed and drained.</summary>
internal sealed class TankPlant : IPlant
{
    private const double FillCubicMetresPerSecond = 0.4 / 60;
    private const double DrainCubicMetresPerSecond = 0.5 / 60;
    private const double PhPerDosedSecond = 0.02;
    private const double ProbeLagSeconds = 10;
    private const double TripVolume = 5.5;

    private readonly bool[] _on = new bool[3];
    private readonly bool[] _faults = new bool[4];
    private readonly double[] _currents = new double[2];
    private double _frozenMilliamps;
    private double _drained;
    private long _asked;
    private double _probePh = 9.5;

    public double Volume { get; set; } = 0.2;

    public double Ph { get; private set; } = 9.5;

    public ImmutableArray<string> Actuators { get; init; } = ["P101", "P102", "P201"];

    public ImmutableArray<string> Setpoints => [];

    public ImmutableArray<TransmitterPort> Transmitters { get; init; } = [new("LT101", 0, 6, "m3"), new("AT101", 0, 14, "pH")];

    public ImmutableArray<string> Contacts { get; init; } = ["LSHH101"];

    public ImmutableArray<NamedFault> Faults { get; } =
        [new("LT101", "broken", FaultKind.Failure), new("LT101", "frozen", FaultKind.Failure), new("LSHH101", "open", FaultKind.Failure), new("model", "broken", FaultKind.Failure)];

    public ImmutableArray<PlantQuantity> Quantities => [new("TK101.volume", "m3"), new("TK101.pH", "pH")];

    public ImmutableArray<PlantQuantity> Totals => [new("sewer.volume", "m3")];

    public double Time { get; private set; }

    public PlantFailure? Failure { get; private set; }

    public void Command(int actuator, bool energised) => _on[actuator] = energised;

    public void SetValue(int setpoint, double share) => throw new ArgumentOutOfRangeException(nameof(setpoint));

    public void Advance(double seconds)
    {
        if (_faults[3])
        {
            Failure = new PlantFailure("volume balance", "TK101", Time, "broken on purpose");
            return;
        }

        Volume += _on[0] ? FillCubicMetresPerSecond * seconds : 0;
        double drained = _on[1] ? Math.Min(Volume, DrainCubicMetresPerSecond * seconds) : 0;
        Volume -= drained;
        _drained += drained;
        Ph -= _on[2] ? PhPerDosedSecond * seconds : 0;
        _probePh += (Ph - _probePh) * seconds / ProbeLagSeconds;
        Time += seconds;
    }

    public ReadOnlySpan<double> Milliamps
    {
        get
        {
            _currents[0] = _faults[0] ? 0 : _faults[1] ? _frozenMilliamps : LevelMilliamps;
            _currents[1] = 4 + (16 * _probePh / 14);
            return _currents;
        }
    }

    public double TrueShare(int transmitter) => transmitter == 1 ? Ph / 14 : Volume / 6;

    public long ContactChanges => _asked++;

    public bool Contact(int contact) => Volume < TripVolume && !_faults[2];

    public double Quantity(int quantity) => quantity == 0 ? Volume : Volume < 0.01 ? double.NaN : Ph;

    public double TotalValue(int total) => _drained;

    public void Inject(int fault)
    {
        _frozenMilliamps = LevelMilliamps;
        _faults[fault] = true;
    }

    public void Clear(int fault) => _faults[fault] = false;

    public PlantBalances Balances() => new(0, 0, "", 0, "");

    public void MeterSolids()
    {
    }

    public PlantLedger Ledger() => PlantLedger.Empty;

    private double LevelMilliamps => 4 + (16 * Volume / 6);
}
