namespace Sequencer.Simulation.Metadata;

/// <summary>
/// An input that stands for what is truly so where a transmitter measures: its name, the transmitter, and the range of the reading in steps, in which it is counted.
/// </summary>
public sealed record RealMetadata(string Input, string Transmitter, long Low, long High);
