using System.Collections.Immutable;

namespace Sequencer.Simulation.Plants;

/// <summary>
/// A plant as the controller's terminals see it. Names are fixed for the life of the object and give
/// the places in the spans; nothing is allocated by reading, writing or advancing.
/// </summary>
public interface IPlant
{
    /// <summary>Tags of the 4-20 mA transmitters.</summary>
    ImmutableArray<string> Instruments { get; }

    /// <summary>Tags of the contacts.</summary>
    ImmutableArray<string> Contacts { get; }

    /// <summary>Tags of the motors and valves.</summary>
    ImmutableArray<string> Actuators { get; }

    ImmutableArray<PlantQuantity> Quantities { get; }

    /// <summary>Names of the faults that can be put into the plant.</summary>
    ImmutableArray<string> Faults { get; }

    /// <summary>Loop currents now, in mA, in the order of <see cref="Instruments"/>.</summary>
    ReadOnlySpan<double> Milliamps { get; }

    /// <summary>Contacts now, true where the circuit is made, in the order of <see cref="Contacts"/>.</summary>
    ReadOnlySpan<bool> ContactsMade { get; }

    /// <summary>Written by the controller: true where the output is energised, in the order of <see cref="Actuators"/>.</summary>
    Span<bool> Energised { get; }

    /// <summary>Values now, in the order and units of <see cref="Quantities"/>.</summary>
    ReadOnlySpan<double> QuantityValues { get; }

    /// <summary>Lets <paramref name="seconds"/> pass with the outputs as they are energised.</summary>
    void Advance(double seconds);

    /// <summary>Puts the fault at this place of <see cref="Faults"/> into the plant, or takes it away.</summary>
    void SetFault(int fault, bool present);

    /// <summary>The conserved quantities' accounts from the start of the run until now.</summary>
    ImmutableArray<PlantBalance> Balances();
}
