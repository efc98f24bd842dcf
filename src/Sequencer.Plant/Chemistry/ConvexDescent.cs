namespace Sequencer.Plant.Chemistry;

/// <summary>
/// The way to a solution from anywhere. At fixed activity coefficients the solution minimises sum m - T x, convex in x, on the
/// plane of saturation with the solids present; a line search on its slope finds it. The ionic strength at which coefficients
/// and solution agree is bracketed and halved in: it lies between 0 and any strength that exceeds what it gives rise to.
/// </summary>
internal sealed class ConvexDescent
{
    private const int StepLimit = 200;
    private const int HalvingLimit = 60;
    private const double StepTolerance = 1e-6;
    private const double BracketTolerance = 1e-7;
    private readonly BalanceEquations equations;
    private readonly double[] start;

    public ConvexDescent(BalanceEquations equations)
    {
        this.equations = equations;
        start = new double[equations.State.X.Length];
    }

    /// <summary>
    /// True if the bracket closed; the point is then within Newton's reach. With <paramref name="settleSolids"/> the solids
    /// present are found anew at each strength, where, coefficients being fixed, one set of them is right.
    /// </summary>
    public bool Solve(bool settleSolids)
    {
        double low = 0;
        double high = double.PositiveInfinity;
        for (int round = 0; round < HalvingLimit; round++)
        {
            if (!(settleSolids ? SettleAtFixedStrength() : ProjectAndSolve()))
            {
                return false;
            }

            double calculated = equations.State.CalculatedStrength;
            bool tooLow = calculated > equations.Strength;
            low = tooLow ? equations.Strength : low;
            high = tooLow ? high : equations.Strength;
            if (high - low < BracketTolerance * high)
            {
                return true;
            }

            equations.Strength = double.IsFinite(high) ? 0.5 * (low + high) : 2 * calculated;
        }

        return false;
    }

    private bool SettleAtFixedStrength()
    {
        int limit = 4 + (8 * equations.Solids.Capacity);
        for (int change = 0; change < limit; change++)
        {
            if (!ProjectAndSolve())
            {
                return false;
            }

            if (!equations.Solids.Exchange(equations.State, lenient: change > limit / 2))
            {
                return true;
            }
        }

        return false;
    }

    private bool ProjectAndSolve() => equations.Solids.Project(equations.State) && SolveAtFixedStrength();

    private bool SolveAtFixedStrength()
    {
        for (int iteration = 0; iteration < StepLimit; iteration++)
        {
            equations.Evaluate();
            double largest = equations.FindStep(holdStrength: true);
            if (double.IsNaN(largest))
            {
                return false;
            }

            equations.MoveSolids();
            if (largest < StepTolerance)
            {
                return true;
            }

            SearchLine(BalanceEquations.Damping(largest));
        }

        return false;
    }

    private void SearchLine(double fraction)
    {
        Speciation state = equations.State;
        state.X.AsSpan(0, state.Count).CopyTo(start);
        double first = Math.Abs(equations.Slope());
        for (int trial = 0; trial < HalvingLimit; trial++)
        {
            for (int item = 0; item < state.Count; item++)
            {
                state.X[item] = start[item] + (fraction * equations.Step[item]);
            }

            state.Evaluate(equations.Strength);
            if (equations.Slope() <= 0.1 * first)
            {
                return;
            }

            fraction *= 0.5;
        }
    }
}
