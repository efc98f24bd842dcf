using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>A batch of water for tests: totals in mol/kg by component name, and the solids allowed.</summary>
internal sealed class WaterBatch
{
    private readonly EquilibriumSolver solver;
    private readonly double[] totals;
    private readonly bool[] allowed;

    public WaterBatch(ChemicalSystem system, ActivityModel model = ActivityModel.FromData)
    {
        solver = new(system, model);
        totals = new double[system.Components.Length];
        allowed = new bool[system.Solids.Length];
    }

    public EquilibriumSolver Solver => solver;

    public double this[string component]
    {
        get => totals[solver.System.ComponentIndex(component)];
        set => totals[solver.System.ComponentIndex(component)] = value;
    }

    public WaterBatch Allow(params string[] solids)
    {
        foreach (string solid in solids)
        {
            allowed[solver.System.SolidIndex(solid)] = true;
        }

        return this;
    }

    public WaterBatch With(string component, double total)
    {
        this[component] = total;
        return this;
    }

    public EquilibriumOutcome TrySolve(double celsius = 25) => solver.Solve(totals, celsius, allowed);

    public double Ph(double celsius = 25)
    {
        Require(TrySolve(celsius));
        return solver.Ph;
    }

    public void HoldPh(double ph, double celsius = 25) => Require(solver.SolveAtPh(totals, celsius, ph, allowed));

    public double Dissolved(string component) => solver.Dissolved[solver.System.ComponentIndex(component)];

    public double SolidAmount(string solid) => solver.SolidAmounts[solver.System.SolidIndex(solid)];

    private static void Require(EquilibriumOutcome outcome) => Assert.True(outcome.IsSolved, outcome.Describe());
}
