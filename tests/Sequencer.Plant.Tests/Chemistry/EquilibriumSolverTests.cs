using CsCheck;
using Sequencer.Plant.Chemistry;
using Sequencer.Testing;

namespace Sequencer.Plant.Tests.Chemistry;

public sealed class EquilibriumSolverTests
{
    private static readonly Gen<(double[] Totals, double Celsius, bool[] Allowed)> Waters = Gen.Select(
        Gen.Select(Gen.Double[-9, -0.5], Gen.Int[0, 9], (power, absent) => absent < 3 ? 0 : Math.Pow(10, power)).Array[Tables.Minteq.Components.Length],
        Gen.Double[0, 60],
        Gen.Bool.Array[Tables.Minteq.Solids.Length]);

    [Fact]
    public void Any_water_solves_and_closes_every_balance_within_a_millionth()
    {
        ChemicalSystem system = Tables.Minteq;
        EquilibriumSolver warm = new(system);
        Waters.SampleRepeatably(
            water =>
            {
                EquilibriumOutcome outcome = warm.Solve(water.Totals, water.Celsius, water.Allowed);
                Assert.True(outcome.IsSolved, outcome.Describe());
                AssertBalances(warm, water.Totals);
                AssertSolids(warm, water.Totals, water.Allowed);
            },
            iterations: 1500);
    }

    [Fact]
    public void A_solution_does_not_depend_on_the_one_before()
    {
        EquilibriumSolver warm = new(Tables.Minteq);
        EquilibriumSolver cold = new(Tables.Minteq);
        Waters.SampleRepeatably(
            water =>
            {
                cold.Reset();
                Assert.True(warm.Solve(water.Totals, water.Celsius, water.Allowed).IsSolved);
                Assert.True(cold.Solve(water.Totals, water.Celsius, water.Allowed).IsSolved);
                Assert.Equal(cold.Ph, warm.Ph, 1e-6);
            },
            iterations: 1000);
    }

    [Fact]
    public void A_system_restricted_to_the_components_present_has_the_same_solution()
    {
        WaterBatch whole = Neutralised(Tables.Minteq);
        WaterBatch small = Neutralised(Tables.Minteq.Restrict("SO4-2", "Fe+3", "Ca+2"));
        Assert.Equal(whole.Ph(), small.Ph(), 1e-8);
        Assert.Equal(whole.SolidAmount("Gypsum"), small.SolidAmount("Gypsum"), 1e-10);
        Assert.True(whole.SolidAmount("Gypsum") > 0.01);
    }

    [Fact]
    public void A_second_solve_allocates_nothing()
    {
        ChemicalSystem system = Tables.Minteq;
        EquilibriumSolver solver = new(system);
        double[] totals = [.. system.Components.Select(_ => 1e-3)];
        bool[] allowed = [.. system.Solids.Select(_ => true)];
        Assert.True(solver.Solve(totals, 25, allowed).IsSolved);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int round = 0; round < 100; round++)
        {
            totals[0] += 1e-5;
            Assert.True(solver.Solve(totals, 20 + (0.1 * round), allowed).IsSolved);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Theory]
    [InlineData(-1e-3, 25, EquilibriumStatus.TotalOutOfRange, "the total of Na+ is -0.001 mol/kg, which cannot be")]
    [InlineData(double.NaN, 25, EquilibriumStatus.TotalOutOfRange, "the total of Na+ is NaN mol/kg, which cannot be")]
    [InlineData(double.PositiveInfinity, 25, EquilibriumStatus.TotalOutOfRange, "the total of Na+ is Infinity mol/kg, which cannot be")]
    [InlineData(1e-3, -5, EquilibriumStatus.TemperatureOutOfRange, "the temperature is -5 C, outside 0 to 100 C")]
    [InlineData(1e-3, double.NaN, EquilibriumStatus.TemperatureOutOfRange, "the temperature is NaN C, outside 0 to 100 C")]
    public void Nonsense_is_refused_with_its_place_and_leaves_the_last_solution(double sodium, double celsius, EquilibriumStatus status, string message)
    {
        WaterBatch batch = new WaterBatch(Tables.Minteq).With("Na+", 1e-3);
        double before = batch.Ph();
        EquilibriumOutcome outcome = batch.With("Na+", sodium).TrySolve(celsius);
        Assert.Equal(status, outcome.Status);
        Assert.Equal(message, outcome.Describe());
        Assert.Equal(before, batch.Solver.Ph);
    }

    [Fact]
    public void A_total_below_zero_by_rounding_counts_as_absent() =>
        Assert.Equal(
            new WaterBatch(Tables.Minteq).With("Na+", 1e-3).Ph(),
            new WaterBatch(Tables.Minteq).With("Na+", 1e-3).With("Ca+2", -1e-9).Ph());

    [Fact]
    public void Two_solids_of_one_composition_leave_the_less_soluble()
    {
        ChemicalSystem system = Tables.Minteq.With("solid | Aragonite | CaCO3 = Ca+2 + CO3-2 | -8.3 | -12 | minteq.v4.dat l.11690");
        WaterBatch batch = new WaterBatch(system).With("Ca+2", 0.01).With("CO3-2", 0.01).Allow("Aragonite", "Calcite");
        batch.Ph();
        Assert.True(batch.SolidAmount("Calcite") > 0.009);
        Assert.Equal(0, batch.SolidAmount("Aragonite"));
    }

    [Fact]
    public void A_held_pH_tells_the_charge_that_brings_it_about()
    {
        WaterBatch batch = Neutralised(Tables.Minteq);
        batch["Na+"] = 0.1;
        for (int round = 0; round < 8; round++)
        {
            batch.HoldPh(9);
            Assert.Equal(9, batch.Solver.Ph, 1e-12);
            batch["Na+"] -= batch.Solver.Charge;
        }

        Assert.Equal(9, batch.Ph(), 1e-5);
    }

    private static WaterBatch Neutralised(ChemicalSystem system) => new WaterBatch(system)
        .With("Fe+3", 0.02).With("SO4-2", 0.05).With("Ca+2", 0.05).Allow("Ferrihydrite", "Gypsum");

    /// <summary>Adds up species and solids by their formulas: totals come back, and charge is zero.</summary>
    private static void AssertBalances(EquilibriumSolver solver, double[] totals)
    {
        ChemicalSystem system = solver.System;
        double charge = 0;
        double scale = 1e-12;
        for (int item = 0; item < system.Species.Length; item++)
        {
            charge += system.Species[item].Charge * solver.Molality[item];
            scale += Math.Abs(system.Species[item].Charge) * solver.Molality[item];
        }

        Assert.True(Math.Abs(charge) < 1e-6 * scale, $"charge {charge} left of {scale}");
        for (int component = 0; component < totals.Length; component++)
        {
            string name = system.Components[component].Name;
            double sum = 0;
            for (int item = 0; item < system.Species.Length; item++)
            {
                sum += Coefficient(system.Species[item].Formation, name) * solver.Molality[item];
            }

            Assert.Equal(sum, solver.Dissolved[component], 1e-6 * (sum + 1e-15));
            for (int solid = 0; solid < system.Solids.Length; solid++)
            {
                sum += Coefficient(system.Solids[solid].Dissolution, name) * solver.SolidAmounts[solid];
            }

            Assert.True(Math.Abs(sum - totals[component]) <= 1e-6 * totals[component], $"{name}: {sum} of {totals[component]}");
        }
    }

    /// <summary>A solid present is saturated, and an allowed one is not supersaturated.</summary>
    private static void AssertSolids(EquilibriumSolver solver, double[] totals, bool[] allowed)
    {
        for (int solid = 0; solid < allowed.Length; solid++)
        {
            double index = solver.SaturationIndex(solid);
            string name = solver.System.Solids[solid].Name;
            Assert.True(!allowed[solid] || index < 1e-6, $"{name} supersaturated by {index} in {string.Join(' ', totals)}");
            Assert.True(solver.SolidAmounts[solid] == 0 || (allowed[solid] && index > -1e-6), $"{name} is there at {index}");
        }
    }

    private static double Coefficient(Stoichiometry stoichiometry, string component) =>
        stoichiometry.Components.Where(term => term.Component == component).Sum(term => term.Coefficient);
}
