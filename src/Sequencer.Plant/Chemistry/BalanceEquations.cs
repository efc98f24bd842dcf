namespace Sequencer.Plant.Chemistry;

/// <summary>
/// The equations for one set of solids: the balance of every component, the proton's standing for that of charge, saturation
/// with each solid present, and the definition of ionic strength; with the Newton step that closes them.
/// </summary>
internal sealed class BalanceEquations
{
    public const double SmallestStrength = 1e-12;
    private const double Tolerance = 1e-10;
    private const double RoundingOfTotals = 1e-15;
    private readonly NewtonStep step;
    private readonly double[] residual;

    public BalanceEquations(Speciation state, PresentSolids solids)
    {
        State = state;
        Solids = solids;
        step = new(state.X.Length, solids.Capacity);
        residual = new double[state.X.Length];
        Total = new double[state.X.Length];
    }

    public Speciation State { get; }

    public PresentSolids Solids { get; }

    /// <summary>Total of each component in use, mol/kg; that of the proton closes the charge.</summary>
    public double[] Total { get; }

    /// <summary>The ionic strength assumed, mol/kg.</summary>
    public double Strength { get; set; }

    /// <summary>The pH is given: the proton's activity is no unknown and its balance no equation.</summary>
    public bool PhHeld { get; set; }

    /// <summary>The first component in use whose activity is an unknown.</summary>
    public int FirstUnknown => PhHeld ? 1 : 0;

    /// <summary>Changes of ln activity of the last step.</summary>
    public ReadOnlySpan<double> Step => step.Dx;

    /// <summary>The place of the worst balance, a component in use, or <see cref="Speciation.Count"/> for the ionic strength.</summary>
    public int WorstPlace { get; private set; }

    public double WorstResidual { get; private set; }

    /// <summary>Evaluates species and residuals at the present point; true if every equation is closed.</summary>
    public bool Evaluate()
    {
        State.Evaluate(Strength);
        double totals = 0;
        for (int item = 0; item < State.Count; item++)
        {
            totals += Math.Abs(Total[item]);
        }

        WorstPlace = State.Count;
        WorstResidual = State.CalculatedStrength - Strength;
        double worst = Math.Abs(WorstResidual) / (Strength + State.CalculatedStrength);
        residual[0] = 0;
        for (int item = FirstUnknown; item < State.Count; item++)
        {
            residual[item] = Open(item);
            double relative = Math.Abs(residual[item]) / (State.AbsoluteSum[item] + (RoundingOfTotals / Tolerance * totals));
            if (!(relative <= worst))
            {
                worst = relative;
                WorstPlace = item;
                WorstResidual = residual[item];
            }
        }

        return worst <= Tolerance && Solids.AreSaturated(State);
    }

    /// <summary>
    /// Finds the Newton step from the point last evaluated, with the ionic strength as an unknown or held.
    /// Returns the largest change of an ln activity, or NaN if there is no step.
    /// </summary>
    public double FindStep(bool holdStrength)
    {
        if (PhHeld)
        {
            TakeOutProton();
        }

        double? mismatch = holdStrength ? null : State.CalculatedStrength - Strength;
        if (!step.Solve(State, residual, Solids.Rows(State.Count), Solids.Deficit(State), mismatch))
        {
            return double.NaN;
        }

        double largest = 0;
        for (int item = 0; item < State.Count; item++)
        {
            largest = Math.Max(largest, Math.Abs(step.Dx[item]));
        }

        return double.IsFinite(largest) ? largest : double.NaN;
    }

    /// <summary>The share of a step that is taken: steps beyond a factor e in an activity are shortened to a logarithm.</summary>
    public static double Damping(double largestChange) => largestChange <= 1 ? 1 : (1 + Math.Log(largestChange)) / largestChange;

    /// <summary>Takes a share of the step in activities, amounts of solids and ionic strength.</summary>
    public void Move(double fraction)
    {
        for (int item = 0; item < State.Count; item++)
        {
            State.X[item] += fraction * step.Dx[item];
        }

        Solids.Move(step.AmountChange, fraction);
        Strength = Math.Clamp(Strength + (fraction * step.StrengthChange), Math.Max(SmallestStrength, 0.1 * Strength), (10 * Strength) + 0.1);
    }

    /// <summary>Takes the step in the amounts of solids only.</summary>
    public void MoveSolids() => Solids.Move(step.AmountChange, 1);

    /// <summary>Slope along the last step of the function sum m - T x, which the solution at fixed coefficients minimises.</summary>
    public double Slope()
    {
        double slope = 0;
        for (int item = FirstUnknown; item < State.Count; item++)
        {
            slope -= Open(item) * step.Dx[item];
        }

        return slope;
    }

    private double Open(int item) => Total[item] - State.Sum[item] - Solids.Share(item, State.Count);

    /// <summary>The proton's row and column become those of the unit matrix.</summary>
    private void TakeOutProton()
    {
        State.Hessian[0] = 1;
        State.IonicSlope[0] = 0;
        State.StrengthSlope[0] = 0;
        for (int row = 1; row < State.Count; row++)
        {
            State.Hessian[row * State.Count] = 0;
        }
    }
}
