using System.Collections.Immutable;
using Sequencer.Plant.Ledger;

namespace Sequencer.Plant;

/// <summary>
/// A plant in motion, seen from the controller's terminals. Everything is addressed by the index in
/// the list that names it. The same description, seed and sequence of calls give the same values
/// bit for bit.
/// </summary>
public interface IPlant
{
    /// <summary>Tags of what the controller can energise (motors, valves), as the program names them.</summary>
    ImmutableArray<string> Actuators { get; }

    /// <summary>4-20 mA loops to the controller.</summary>
    ImmutableArray<TransmitterPort> Transmitters { get; }

    /// <summary>Tags of contacts to the controller: switches, running and limit-switch feedbacks, hand switches.</summary>
    ImmutableArray<string> Contacts { get; }

    /// <summary>What can go wrong.</summary>
    ImmutableArray<NamedFault> Faults { get; }

    /// <summary>What is truly so in the plant, which no instrument needs to see: <c>TK201.volume</c>.</summary>
    ImmutableArray<PlantQuantity> Quantities { get; }

    /// <summary>Running totals since the start, in the order of <see cref="TotalValue"/>.</summary>
    ImmutableArray<PlantQuantity> Totals { get; }

    /// <summary>Seconds since the start.</summary>
    double Time { get; }

    /// <summary>Null while all is well; once set, the plant stands still at the time it was found.</summary>
    PlantFailure? Failure { get; }

    /// <summary>Energises or de-energises an actuator from now on; it moves in its own time.</summary>
    void Command(int actuator, bool energised);

    /// <summary>Tags of set values from the controller (speeds), as the program names them.</summary>
    ImmutableArray<string> Setpoints { get; }

    /// <summary>Gives a set value as a share of its range, 0 to 1, from now on.</summary>
    void SetValue(int setpoint, double share);

    /// <summary>Moves the plant on with the commands as they are; does nothing after a <see cref="Failure"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">seconds is not above zero or not finite</exception>
    void Advance(double seconds);

    /// <summary>The loop currents now, in mA, with the failure currents of NAMUR NE 43; one for each of <see cref="Transmitters"/>.</summary>
    ReadOnlySpan<double> Milliamps { get; }

    /// <summary>What is truly so where the transmitter measures, as a share of its range; beyond 0 to 1 where it is outside.</summary>
    double TrueShare(int transmitter);

    /// <summary>Grows whenever a contact may have turned: while it stays the contacts do.</summary>
    long ContactChanges { get; }

    /// <summary>Whether the contact is made now: the raw bit, its polarity as wired.</summary>
    bool Contact(int contact);

    /// <summary>The value now, in the unit of the quantity's entry; not a number where it does not exist (pH of an empty tank).</summary>
    double Quantity(int quantity);

    /// <summary>The value now, in the unit of the total's entry; not a number while nothing has counted (lowest pH discharged).</summary>
    double TotalValue(int total);

    /// <summary>Starts a fault; one that is already there stays.</summary>
    void Inject(int fault);

    /// <summary>Ends a fault: the piece is repaired or its reagent refilled.</summary>
    void Clear(int fault);

    /// <summary>How well the balances of mass and charge close now.</summary>
    PlantBalances Balances();

    /// <summary>Looks at the dry solids in what passes the lines, for the ledger: the more often, the closer.</summary>
    void MeterSolids();

    /// <summary>What has been moved since the start.</summary>
    PlantLedger Ledger();
}
