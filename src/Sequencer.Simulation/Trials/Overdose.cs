namespace Sequencer.Simulation.Trials;

/// <summary>An output, and the litres that truly went through it beyond what its program allows in a batch.</summary>
public sealed record Overdose(string Output, double Litres);
