namespace Sequencer.Simulation.Pictures;

/// <summary>How an outcome goes with a quantity that was drawn: a rank correlation from -1 to 1.</summary>
public sealed record DriverBar(string Outcome, string Quantity, double Correlation);
