namespace Sequencer.Plant.Chemistry;

/// <summary>
/// Solves the equations for one set of solids: by Newton's method from the last point and, if that fails, from a rough guess
/// by way of <see cref="ConvexDescent"/>.
/// </summary>
internal sealed class BalanceProblem
{
    private const int NewtonIterations = 60;
    private const double LastStepTolerance = 1e-4;
    private readonly ConvexDescent descent;

    public BalanceProblem(Speciation state, PresentSolids solids)
    {
        Equations = new(state, solids);
        descent = new(Equations);
    }

    public BalanceEquations Equations { get; }

    /// <summary>Forgets the last point; where the pH is held it stays.</summary>
    public void Restart()
    {
        StartingGuess.Take(Equations);
        StartingGuess.SeedSolids(Equations);
    }

    /// <summary>True if solved; otherwise <see cref="BalanceEquations.WorstPlace"/> tells which equation did not close.</summary>
    public bool Solve()
    {
        if (Newton())
        {
            return true;
        }

        StartingGuess.Take(Equations);
        return descent.Solve(settleSolids: false) && Newton();
    }

    /// <summary>Like <see cref="Solve"/>, but finds the solids present too; slow.</summary>
    public bool SolveWithSolids()
    {
        StartingGuess.Take(Equations);
        return descent.Solve(settleSolids: true) && Newton();
    }

    private bool Newton()
    {
        double largest = double.PositiveInfinity;
        for (int iteration = 0; iteration < NewtonIterations; iteration++)
        {
            bool closed = Equations.Evaluate();
            if (closed && largest < LastStepTolerance)
            {
                return true;
            }

            largest = Equations.FindStep(holdStrength: false);
            if (double.IsNaN(largest))
            {
                return false;
            }

            Equations.Move(BalanceEquations.Damping(largest));
        }

        return false;
    }
}
