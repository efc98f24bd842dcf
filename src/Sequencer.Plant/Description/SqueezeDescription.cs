namespace Sequencer.Plant.Description;

/// <summary>Membranes that press a cake behind the filtration.</summary>
/// <param name="Valve">lets the pressure on</param>
/// <param name="Pascals">their pressure</param>
/// <param name="CakeKilogramsPerCubicMetre">dry solids in a cake that has been under it for long</param>
public sealed record SqueezeDescription(string Valve, double Pascals, double CakeKilogramsPerCubicMetre);
