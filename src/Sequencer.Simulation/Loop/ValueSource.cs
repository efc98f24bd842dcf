namespace Sequencer.Simulation.Loop;

/// <summary>
/// Where a named value is read: a place in one of the loop's arrays, and what one step of the integer
/// there is in <see cref="Unit"/>.
/// </summary>
public sealed record ValueSource(string Name, ValueOrigin Origin, int Place, double Resolution, string Unit, int Decimals);
