namespace Sequencer.Plant.Integration;

/// <summary>The right-hand side of a system of ordinary differential equations: fills dy/dt, per second.</summary>
internal delegate void Rates(double time, ReadOnlySpan<double> state, Span<double> rates);
