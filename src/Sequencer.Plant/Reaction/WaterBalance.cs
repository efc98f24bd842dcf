using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>Composes a supply's water: changes its balancing ion until the water is neutral at the pH given.</summary>
internal static class WaterBalance
{
    private const int MostRounds = 50;

    /// <summary>eq/L left over, far below what shifts a pH at the resolution of a probe.</summary>
    private const double Balanced = 1e-13;

    /// <summary>The content of a litre; null with the reason where no amount of the ion fits.</summary>
    public static double[]? Compose(SupplyDescription supply, ContentLayout layout, WaterChemistry chemistry, out string reason)
    {
        double[] content = new double[layout.Count];
        layout.Add(content, supply.Dissolved);
        content[layout.Suspended] = supply.SuspendedGramsPerLitre;
        int ion = layout.Dissolved.IndexOf(supply.BalancedBy);
        int charge = IonCharge(supply.BalancedBy);
        for (int round = 0; round < MostRounds; round++)
        {
            EquilibriumOutcome outcome = chemistry.SolveAtPh(content.AsSpan(0, layout.Dissolved.Length), supply.Celsius, supply.Ph, out double left);
            if (!outcome.IsSolved)
            {
                reason = outcome.Describe();
                return null;
            }

            if (Math.Abs(left) < Balanced)
            {
                reason = "";
                return content;
            }

            content[ion] -= left / charge;
            if (content[ion] < 0.0)
            {
                reason = FormattableString.Invariant($"{-content[ion] * 1000.0:0.###} mmol/L too much is there already");
                return null;
            }
        }

        reason = "the amount does not settle";
        return null;
    }

    private static int IonCharge(Substance substance) => substance.Name switch
    {
        "sodium" or "potassium" => 1,
        "sulphate" => -2,
        _ => -1,
    };
}
