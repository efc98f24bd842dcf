namespace Sequencer.Simulation.Plants;

/// <summary>
/// What went in, came out and is still there of something conserved since the start of the run; the
/// difference is what the plant model's arithmetic lost.
/// </summary>
public sealed record PlantBalance(string Name, string Unit, double AtStart, double In, double Out, double AtEnd)
{
    public double Difference => AtStart + In - Out - AtEnd;
}
