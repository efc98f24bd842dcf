using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Faults;
using Sequencer.Plant.Instruments;
using Sequencer.Plant.Ledger;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant;

/// <summary>
/// One run of a described plant. A run supports review by a competent person; it is no proof about
/// the real plant.
/// </summary>
public sealed class PlantRun : IPlant
{
    /// <summary>Of the throughput; balances are kept but for rounding.</summary>
    private const double ClosedTo = 1e-9;

    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly InstrumentPanel _panel;
    private readonly ImmutableArray<Fault> _faults;
    private readonly bool[] _isInjected;
    private readonly ImmutableArray<int> _driven;
    private readonly ImmutableArray<NamedValue> _quantities;
    private readonly PlantTotals _totals;
    private readonly Attendance _attendance;
    private readonly SolidsMeter _solids;
    private readonly BalanceSheet _balances;

    private PlantRun(PlantModel model, ulong seed)
    {
        _parts = new PlantParts(model);
        _motion = new PlantMotion(_parts);
        _panel = new InstrumentPanel(_parts, _motion, seed);
        _faults = FaultCatalogue.Of(_parts, _motion, _panel);
        _isInjected = new bool[_faults.Length];
        _quantities = [.. PlantQuantities.Of(_parts, _motion, _panel)];
        _totals = new PlantTotals(_parts, _motion);
        _attendance = new Attendance(_parts, _motion);
        _solids = new SolidsMeter(_parts, _motion);
        _balances = new BalanceSheet(_parts, _motion, _solids);
        Actuators = [.. model.Drives.Select(drive => drive.Tag)];
        _driven = [.. Enumerable.Range(0, model.Drives.Length).Where(drive => model.Drives[drive].SpeedFrom is not null)];
        Setpoints = [.. _driven.Select(drive => model.Drives[drive].SpeedFrom ?? "")];
        Transmitters = [.. model.Transmitters.Select(Port)];
        Contacts = [.. _panel.Contacts.Select(contact => contact.Tag)];
        Faults = [.. _faults.Select(fault => fault.Named)];
        Quantities = [.. _quantities.Select(quantity => quantity.Quantity)];
        Totals = [.. _totals.All.Select(total => total.Quantity)];
    }

    public ImmutableArray<string> Actuators { get; }

    public ImmutableArray<string> Setpoints { get; }

    public ImmutableArray<TransmitterPort> Transmitters { get; }

    public ImmutableArray<string> Contacts { get; }

    public ImmutableArray<NamedFault> Faults { get; }

    public ImmutableArray<PlantQuantity> Quantities { get; }

    public ImmutableArray<PlantQuantity> Totals { get; }

    public double Time => _motion.Time;

    public PlantFailure? Failure => _motion.Failure;

    /// <summary>How much work the run has been: accepted steps of the equations and equilibria solved.</summary>
    public (long Steps, long Equilibria) Effort => (_motion.Steps, _motion.Waters.EquilibriaSolved);

    /// <summary>A plant at rest at time 0, everything de-energised, its tanks as described.</summary>
    public static PlantRun Start(PlantModel model, ulong seed) => new(model, seed);

    public void Command(int actuator, bool energised)
    {
        if (_parts.Drives[actuator].Command(Time, energised))
        {
            _motion.Interrupt();
        }
    }

    public void SetValue(int setpoint, double share)
    {
        if (_parts.Drives[_driven[setpoint]].SetSpeed(Time, Math.Clamp(share, 0.0, 1.0)))
        {
            _motion.Interrupt();
        }
    }

    public void Advance(double seconds)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(seconds);
        ArgumentOutOfRangeException.ThrowIfEqual(double.IsFinite(seconds), false, nameof(seconds));
        if (Failure is not null)
        {
            return;
        }

        _motion.AdvanceTo(Time + seconds);
        if (Failure is not null)
        {
            return;
        }

        _panel.Advance(seconds);
        if (_attendance.Observe())
        {
            _motion.Interrupt();
        }

        _totals.Advance();
    }

    public double TrueShare(int transmitter) => _panel.Transmitters.TrueShare(transmitter);

    public ReadOnlySpan<double> Milliamps => _panel.Transmitters.Milliamps;

    public long ContactChanges => _panel.ContactChanges;

    public bool Contact(int contact) => _panel.Contacts[contact].IsMade;

    public double Quantity(int quantity) => _quantities[quantity].Value();

    public double TotalValue(int total) => _totals.All[total].Value();

    public void Inject(int fault) => Set(fault, true);

    public void Clear(int fault) => Set(fault, false);

    public PlantBalances Balances()
    {
        PlantBalances drawn = _balances.Draw();
        if (!(drawn.Worst <= ClosedTo))
        {
            _motion.Fail(
                Math.Abs(drawn.Volume) >= Math.Abs(drawn.Substance) ? "balance of volume" : $"balance of {drawn.WorstSubstance}",
                _parts.Model.Name,
                FormattableString.Invariant($"{drawn.Worst:G3} of the throughput is not accounted for"));
        }

        return drawn;
    }

    public void MeterSolids() => _solids.Observe();

    public PlantLedger Ledger() => _balances.Ledger();

    private static TransmitterPort Port(TransmitterDescription described) => new(
        described.Tag,
        described.Low / described.Unit.Scale,
        described.High / described.Unit.Scale,
        described.Unit.Symbol);

    private void Set(int fault, bool injected)
    {
        if (_isInjected[fault] != injected)
        {
            _isInjected[fault] = injected;
            _faults[fault].Set(Time, injected);
            _motion.Interrupt();
        }
    }
}
