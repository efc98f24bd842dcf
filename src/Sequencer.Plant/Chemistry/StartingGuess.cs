namespace Sequencer.Plant.Chemistry;

/// <summary>A rough first point where there is no last solution.</summary>
internal static class StartingGuess
{
    private const int Sweeps = 25;
    private const double LargestStrength = 0.1;

    /// <summary>Activities from their balances one by one, from pH 7 or the pH held.</summary>
    public static void Take(BalanceEquations equations)
    {
        Speciation state = equations.State;
        state.ResetWater();
        double strength = BalanceEquations.SmallestStrength;
        for (int item = 0; item < state.Count; item++)
        {
            strength += Math.Abs(equations.Total[item]);
            if (item > 0)
            {
                state.X[item] = Math.Log(equations.Total[item]) - 1;
            }
            else if (!equations.PhHeld)
            {
                state.X[0] = -7 * Math.Log(10);
            }
        }

        equations.Strength = Math.Min(strength, LargestStrength);
        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            Rebalance(equations);
        }
    }

    /// <summary>Takes as present each solid with which the guess is supersaturated; too many are removed again later.</summary>
    public static void SeedSolids(BalanceEquations equations)
    {
        PresentSolids solids = equations.Solids;
        Speciation state = equations.State;
        for (int next = solids.MostSupersaturated(state, lenient: false); next >= 0; next = solids.MostSupersaturated(state, lenient: false))
        {
            solids.Add(next, state.Count);
            if (!solids.Project(state))
            {
                solids.RemoveAt(solids.Count - 1, state.Count);
                return;
            }
        }
    }

    /// <summary>One sweep: each activity is scaled by what produces over what consumes its component (positive continued fractions).</summary>
    private static void Rebalance(BalanceEquations equations)
    {
        Speciation state = equations.State;
        state.Evaluate(equations.Strength);
        for (int item = equations.FirstUnknown; item < state.Count; item++)
        {
            double total = equations.Total[item];
            double produced = 0.5 * (state.AbsoluteSum[item] + state.Sum[item]);
            double consumed = 0.5 * (state.AbsoluteSum[item] - state.Sum[item]);
            double ratio = (consumed + Math.Max(total, 0)) / (produced + Math.Max(-total, 0));
            double sensitivity = Math.Max(1, state.Hessian[(item * state.Count) + item] / state.AbsoluteSum[item]);
            state.X[item] += Math.Clamp(Math.Log(ratio) / (2 * sensitivity), -5, 5);
        }
    }
}
