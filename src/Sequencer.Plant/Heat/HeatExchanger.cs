namespace Sequencer.Plant.Heat;

/// <summary>A counterflow heat exchanger, by its effectiveness and number of transfer units.</summary>
internal static class HeatExchanger
{
    /// <summary>Where the two capacities differ by less than this part the formula for equal ones is used: the other is 0/0 there.</summary>
    private const double Alike = 1e-9;

    /// <summary>
    /// Heat passed on as a part of what an endless exchanger would pass on: e = (1 - exp(-N (1 - C)))/(1 - C exp(-N (1 - C))), N/(1 + N) where C = 1, with N = UA/Cmin and C =
    /// Cmin/Cmax. Source: engineering reference page (secondary).
    /// </summary>
    public static double Effectiveness(double transferUnits, double capacityRatio)
    {
        if (1.0 - capacityRatio < Alike)
        {
            return transferUnits / (1.0 + transferUnits);
        }

        double decay = Math.Exp(-transferUnits * (1.0 - capacityRatio));
        return (1.0 - decay) / (1.0 - (capacityRatio * decay));
    }

    /// <summary>Heat passed on in W: capacities (mass flow times specific heat) and UA in W/K, temperatures at the inlets in C.</summary>
    public static double Heat(double hotCapacity, double coldCapacity, double conductance, double hotInlet, double coldInlet)
    {
        double least = Math.Min(hotCapacity, coldCapacity);
        double most = Math.Max(hotCapacity, coldCapacity);
        return Effectiveness(conductance / least, least / most) * least * (hotInlet - coldInlet);
    }
}
