namespace Sequencer.Simulation.Trials;

/// <summary>Something with a name, and when it came, in seconds since the start.</summary>
public sealed record Happening(string Name, double Seconds);
