using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.Chemistry;
using Sequencer.Plant.Titration;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Titration;

/// <summary>Titrations of waters whose composition is known, by the equilibrium solver or a textbook; the model knows only volumes and pH.</summary>
public sealed class AcidityModelTests
{
    private static readonly ChemicalSystem Textbook = Tables.With("textbook-constants.txt");

    /// <summary>10 m3 of hydrochloric acid at pH 2.00 to pH 7 with 17.6 mol/L: 5.68 L. Source: computed.</summary>
    [Fact]
    public void Sodium_hydroxide_for_ten_cubic_metres_of_strong_acid()
    {
        TitrationTable table = Titrated(() => new WaterBatch(Textbook, ActivityModel.Ideal).With("Cl-", 0.01), [.. Enumerable.Range(0, 25).Select(portion => portion * 0.5e-3)]);
        DoseEstimate dose = new DoseModel(table).Estimate(7.0, 17.6, 0.02, 0.01);
        Within(5.68, dose.Dose * 10_000, 0.0568);
        Within(2 * 0.0568, dose.Uncertainty * 10_000, 0.02);
    }

    /// <summary>25.0 mL of 0.100 M acetic acid with 0.100 M base, without the point at 25 mL: 0.100 eq/L brings it to 8.72. Source: open chemistry textbook, Table 14.4.</summary>
    [Fact]
    public void The_equivalence_point_of_acetic_acid_is_between_its_neighbours()
    {
        TitrationTable table = new(
            0.025,
            0.100,
            25,
            [
                (0, 2.875), (5e-3, 4.145), (10e-3, 4.569), (12.5e-3, 4.745), (20e-3, 5.347), (24e-3, 6.125), (24.5e-3, 6.435), (24.9e-3, 7.141),
                (25.1e-3, 10.30), (25.5e-3, 11.00), (26e-3, 11.29), (28e-3, 11.75), (30e-3, 11.96),
            ]);
        Within(0.100, AcidityModel.Fitted(table).BaseNeeded(8.72, 2.0), 0.0005);
    }

    /// <summary>A metal-finishing rinse as the solver with activities sees it: sulphuric acid, iron that falls out, acetate, carbonate. Each third point is kept from the model.</summary>
    [Fact]
    public void What_lies_between_the_points_of_a_waste_is_met()
    {
        Func<WaterBatch> waste = () => new WaterBatch(ChemicalSystem.Default())
            .With("SO4-2", 0.012).With("Fe+3", 0.002).With("Acetate-", 0.004).With("CO3-2", 0.001).With("Ca+2", 0.001).Allow("Ferrihydrite");
        TitrationTable whole = Titrated(waste, [.. Enumerable.Range(0, 60).Select(portion => portion * 0.55e-3)]);
        TitrationTable seen = whole with { Points = [.. whole.Points.Where((_, place) => place % 3 != 1)] };
        AcidityModel model = AcidityModel.Fitted(seen);
        foreach ((double litres, double ph) in whole.Points.Where((_, place) => place % 3 == 1))
        {
            // Where a hydroxide falls out pH hardly moves: there a tenth of a pH is much base, and no model by pH knows better.
            double dilution = whole.Dilution(litres);
            Assert.InRange(whole.BaseAdded(litres), model.BaseNeeded(ph - 0.1, dilution) - 0.0006, model.BaseNeeded(ph + 0.1, dilution) + 0.0006);
        }
    }

    /// <summary>A reagent as thin as the water is sour brings as much water as there was: the base for pH 11 is that for the acid, and 1.00e-3 eq/L for twice the volume.</summary>
    [Fact]
    public void A_thin_reagent_dilutes()
    {
        TitrationTable table = Titrated(() => new WaterBatch(Textbook, ActivityModel.Ideal).With("Cl-", 0.01), [.. Enumerable.Range(0, 41).Select(portion => portion * 0.5e-3)]);
        AcidityModel model = AcidityModel.Fitted(table);
        Within(0.0100, model.Dose(7.0, 0.1) * 0.1, 0.0002);
        double dose = model.Dose(11.0, 0.0122);
        WaterBatch mixed = new WaterBatch(Textbook, ActivityModel.Ideal).With("Cl-", 0.01 / (1 + dose)).With("Na+", 0.0122 * dose / (1 + dose));
        Within(11.0, mixed.Ph(), 0.05);
    }

    /// <summary>A litre of the water with portions of 1 mol/L sodium hydroxide.</summary>
    private static TitrationTable Titrated(Func<WaterBatch> water, ImmutableArray<double> litres) => new(
        1.0,
        1.0,
        25,
        [
            .. litres.Select(added =>
            {
                WaterBatch batch = water();
                foreach (Component component in batch.Solver.System.Components)
                {
                    batch[component.Name] /= 1.0 + added;
                }

                return (added, batch.With("Na+", added / (1.0 + added)).Ph());
            }),
        ]);
}
