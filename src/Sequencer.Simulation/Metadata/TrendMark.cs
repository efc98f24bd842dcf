namespace Sequencer.Simulation.Metadata;

/// <summary>A setpoint or limit to draw across the trend of a signal, in the signal's unit.</summary>
public sealed record TrendMark(string Tag, string Label, double Value);
