namespace Sequencer.Plant;

/// <summary>
/// What is left over when contents now, contents at the start and what came and went are summed,
/// as a fraction of the throughput (what was there plus what came). Zero but for rounding.
/// </summary>
/// <param name="Volume">liquid volume</param>
/// <param name="Substance">the worst dissolved substance or solid</param>
/// <param name="WorstSubstance">its name; empty where nothing is dissolved</param>
/// <param name="Charge">ions' charges against each other in the last water whose pH was solved, over the sum of their sizes</param>
/// <param name="TooStrong">tanks whose water has been stronger than Davies' activities hold for, 0.5 mol/kg, parted by commas; "" for none</param>
public sealed record PlantBalances(double Volume, double Substance, string WorstSubstance, double Charge, string TooStrong)
{
    /// <summary>Of volume and substance, without its sign.</summary>
    public double Worst => Math.Max(Math.Abs(Volume), Math.Abs(Substance));
}
