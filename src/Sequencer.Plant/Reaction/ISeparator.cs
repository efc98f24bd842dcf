using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>A piece that draws from a tank, keeps part of it and gives the rest to another.</summary>
internal interface ISeparator
{
    /// <summary>The tank that it draws from.</summary>
    TankBody Trough { get; }

    /// <summary>The tank that it gives to.</summary>
    TankBody FiltrateTo { get; }

    /// <summary>What it draws in L/s if the tank has it.</summary>
    double WantedFlow(double time, ReadOnlySpan<double> state);

    /// <summary>What it gives to the other tank in L/s while so much is drawn.</summary>
    double Filtrate(double time, double drawn, ReadOnlySpan<double> state);

    /// <summary>Adds what so many L/s from the tank do.</summary>
    void AddRates(double time, double flow, TankTransfer transfer, ReadOnlySpan<double> state, Span<double> rates);

    /// <summary>The first time after another at which anything that drives it has a kink.</summary>
    double NextKink(double time);
}
