namespace Sequencer.Plant.Chemistry;

/// <summary>
/// Rates at which solids dissolve and form, for a plant's differential equations. Every rate constant is configuration: it
/// depends on grain, stirring and impurities, and no published value fits another plant. Forms: common practice, no source.
/// </summary>
public static class SolidKinetics
{
    /// <summary>
    /// Rate in mol/(kg s) at which a solid dissolves: k n (1 - (IAP/K)^(1/v)), with v the ions from one mole; for a salt of
    /// one cation in its own saturated water the last factor is about the concentration still missing, over that at
    /// saturation. 0 in supersaturated water, and 0 when the solid is used up.
    /// </summary>
    /// <param name="perSecond">k, 1/s: the share of the solid that would dissolve in a second in pure water</param>
    /// <param name="solid">n, mol of undissolved solid per kg water</param>
    /// <param name="saturationRatio">IAP/K, from <see cref="EquilibriumSolver.SaturationRatio"/></param>
    /// <param name="ions">v, ions from one mole: 3 for Ca(OH)2</param>
    public static double Dissolution(double perSecond, double solid, double saturationRatio, int ions) =>
        perSecond * Math.Max(0, solid) * Math.Max(0, 1 - Math.Pow(saturationRatio, 1.0 / ions));

    /// <summary>
    /// Rate in mol/(kg s), positive as the solid forms, of the first-order approach k (n at equilibrium - n).
    /// </summary>
    /// <param name="perSecond">k, 1/s</param>
    /// <param name="atEquilibrium">mol/kg that would be there at equilibrium, from <see cref="EquilibriumSolver.SolidAmounts"/></param>
    /// <param name="solid">n, mol/kg there now</param>
    public static double Approach(double perSecond, double atEquilibrium, double solid) => perSecond * (atEquilibrium - solid);
}
