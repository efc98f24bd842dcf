using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Titration;

/// <summary>The protons and hydroxide ions of a water, from its pH.</summary>
/// <param name="IonProduct">log10 of the product of their activities.</param>
/// <param name="Activity">Activity coefficient of an ion of one charge.</param>
internal readonly record struct WaterIons(double IonProduct, double Activity)
{
    private static readonly EquilibriumConstant Water = ChemicalSystem.Default().Species.Single(species => species.Name == "OH-").Constant;

    /// <summary>From water without salt to the least that Davies' equation gives, near 0.5 mol/kg; a probe's own slope is within that too.</summary>
    private static readonly ImmutableArray<double> Activities = [1.0, 0.95, 0.9, 0.85, 0.8, 0.75];

    /// <summary>As they may be in a sample: what else is dissolved in it is not known.</summary>
    public static IEnumerable<WaterIons> In(TitrationTable table)
    {
        double ionProduct = Water.Log10(table.Celsius);
        return Activities.Select(activity => new WaterIons(ionProduct, activity));
    }

    /// <summary>Hydroxide less protons, eq/L.</summary>
    public double Base(double ph) => (Math.Pow(10, ph + IonProduct) - Math.Pow(10, -ph)) / Activity;
}
