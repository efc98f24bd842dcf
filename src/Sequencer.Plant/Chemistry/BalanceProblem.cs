namespace Sequencer.Plant.Chemistry;

/// <summary>
/// The equations for one set of solids: every balance of a component, the proton's standing for that of charge, saturation
/// with each solid present, and the definition of ionic strength. Solves them by Newton's method from the last point, and,
/// if that fails, from a rough guess by minimising the convex function at fixed activity coefficients first.
/// </summary>
internal sealed class BalanceProblem
{
    private const int NewtonIterations = 60;
    private const int DescentIterations = 200;
    private const int StrengthIterations = 60;
    private const int GuessSweeps = 25;
    private const double Tolerance = 1e-10;
    private const double LastStepTolerance = 1e-4;
    private const double SmallestStrength = 1e-12;
    private const double RoundingOfTotals = 1e-15;

    private readonly PresentSolids solids;
    private readonly NewtonStep step;
    private readonly double[] residual;
    private readonly double[] start;
    private bool holdPh;

    public BalanceProblem(Speciation state, PresentSolids solids)
    {
        State = state;
        this.solids = solids;
        step = new(state.X.Length, solids.Capacity);
        residual = new double[state.X.Length];
        start = new double[state.X.Length];
        Total = new double[state.X.Length];
    }

    public Speciation State { get; }

    /// <summary>Total of each component in use, mol/kg; that of the proton closes the charge.</summary>
    public double[] Total { get; }

    public double Strength { get; private set; }

    /// <summary>The place of the worst balance, a component in use, or <see cref="Speciation.Count"/> for the ionic strength.</summary>
    public int WorstPlace { get; private set; }

    public double WorstResidual { get; private set; }

    /// <summary>Forgets the last point; X[0] stays where the pH is held.</summary>
    public void Restart(bool phHeld)
    {
        holdPh = phHeld;
        State.ResetWater();
        Strength = SmallestStrength;
        for (int item = 0; item < State.Count; item++)
        {
            Strength += Math.Abs(Total[item]);
            if (item > 0)
            {
                State.X[item] = Math.Log(Total[item]) - 1;
            }
            else if (!phHeld)
            {
                State.X[0] = -7 * Math.Log(10);
            }
        }

        Strength = Math.Min(Strength, 0.1);
        for (int sweep = 0; sweep < GuessSweeps; sweep++)
        {
            Rebalance();
        }

        SeedSolids();
    }

    /// <summary>Continues from the last point.</summary>
    public void Continue(bool phHeld) => holdPh = phHeld;

    /// <summary>True if solved; otherwise <see cref="WorstPlace"/> tells which equation did not close.</summary>
    public bool Solve()
    {
        if (Newton())
        {
            return true;
        }

        Restart(holdPh);
        return Descend() && Newton();
    }

    private bool Newton()
    {
        double lastStep = double.PositiveInfinity;
        for (int iteration = 0; iteration < NewtonIterations; iteration++)
        {
            State.Evaluate(Strength);
            bool closed = Residuals();
            if (closed && lastStep < LastStepTolerance)
            {
                return true;
            }

            HoldPh();
            if (!step.Solve(State, residual, solids.Rows(State.Count), solids.Deficit(State), State.CalculatedStrength - Strength))
            {
                return false;
            }

            lastStep = Largest(step.Dx);
            if (!double.IsFinite(lastStep))
            {
                return false;
            }

            Move(lastStep <= 1 ? 1 : (1 + Math.Log(lastStep)) / lastStep);
        }

        return false;
    }

    private void Move(double fraction)
    {
        for (int item = 0; item < State.Count; item++)
        {
            State.X[item] += fraction * step.Dx[item];
        }

        solids.MoveTowards(step.Amount, fraction);
        Strength = Math.Clamp(Strength + (fraction * step.StrengthChange), Math.Max(SmallestStrength, 0.1 * Strength), (10 * Strength) + 0.1);
    }

    /// <summary>
    /// At fixed activity coefficients the solution minimises sum m - T x, convex in x, on the plane of saturation with the
    /// solids present; a line search on its slope finds it from anywhere. Then the coefficients are renewed, and so on.
    /// </summary>
    private bool Descend()
    {
        for (int round = 0; round < StrengthIterations; round++)
        {
            if (!solids.Project(State) || !DescendAtFixedStrength())
            {
                return false;
            }

            double change = State.CalculatedStrength - Strength;
            Strength += 0.5 * change;
            if (Math.Abs(change) < 1e-3 * Strength)
            {
                return true;
            }
        }

        return false;
    }

    private bool DescendAtFixedStrength()
    {
        for (int iteration = 0; iteration < DescentIterations; iteration++)
        {
            State.Evaluate(Strength);
            Residuals();
            HoldPh();
            if (!step.Solve(State, residual, solids.Rows(State.Count), solids.Deficit(State), null))
            {
                return false;
            }

            double largest = Largest(step.Dx);
            if (!double.IsFinite(largest))
            {
                return false;
            }

            solids.MoveTowards(step.Amount, 1);
            if (largest < 1e-6)
            {
                return true;
            }

            SearchLine(largest <= 1 ? 1 : (1 + Math.Log(largest)) / largest);
        }

        return false;
    }

    private void SearchLine(double fraction)
    {
        State.X.AsSpan(0, State.Count).CopyTo(start);
        double first = Slope();
        for (int trial = 0; trial < 60; trial++)
        {
            for (int item = 0; item < State.Count; item++)
            {
                State.X[item] = start[item] + (fraction * step.Dx[item]);
            }

            State.Evaluate(Strength);
            if (Slope() <= 0.1 * Math.Abs(first))
            {
                return;
            }

            fraction *= 0.5;
        }
    }

    /// <summary>Slope of sum m - T x along the step.</summary>
    private double Slope()
    {
        double slope = 0;
        for (int item = holdPh ? 1 : 0; item < State.Count; item++)
        {
            slope += (State.Sum[item] - Total[item] + solids.Share(item, State.Count)) * step.Dx[item];
        }

        return slope;
    }

    /// <summary>Residuals of the balances and of the ionic strength; true if all are closed.</summary>
    private bool Residuals()
    {
        double totals = 0;
        for (int item = 0; item < State.Count; item++)
        {
            totals += Math.Abs(Total[item]);
        }

        WorstPlace = State.Count;
        WorstResidual = State.CalculatedStrength - Strength;
        double worst = Math.Abs(WorstResidual) / (Strength + State.CalculatedStrength);
        for (int item = 0; item < State.Count; item++)
        {
            residual[item] = Total[item] - State.Sum[item];
            double open = residual[item] - solids.Share(item, State.Count);
            double relative = Math.Abs(open) / (State.AbsoluteSum[item] + (RoundingOfTotals / Tolerance * totals));
            if (!(relative <= worst) && !(item == 0 && holdPh))
            {
                worst = relative;
                WorstPlace = item;
                WorstResidual = open;
            }
        }

        return worst <= Tolerance && solids.AreSaturated(State);
    }

    /// <summary>Takes the proton's activity out of the unknowns: its row and column become those of the unit matrix.</summary>
    private void HoldPh()
    {
        if (!holdPh)
        {
            return;
        }

        residual[0] = 0;
        State.Hessian[0] = 1;
        State.IonicSlope[0] = 0;
        State.StrengthSlope[0] = 0;
        for (int row = 1; row < State.Count; row++)
        {
            State.Hessian[row * State.Count] = 0;
        }
    }

    /// <summary>Takes as present each solid with which the rough guess is supersaturated; too many are removed again later.</summary>
    private void SeedSolids()
    {
        for (int next = solids.MostSupersaturated(State); next >= 0; next = solids.MostSupersaturated(State))
        {
            solids.Add(next, State.Count);
            if (!solids.Project(State))
            {
                solids.RemoveAt(solids.Count - 1, State.Count);
                return;
            }
        }
    }

    /// <summary>One sweep of a rough guess: each activity is scaled by its own balance (positive continued fractions).</summary>
    private void Rebalance()
    {
        State.Evaluate(Strength);
        for (int item = holdPh ? 1 : 0; item < State.Count; item++)
        {
            double excess = State.Sum[item];
            double produced = 0.5 * (State.AbsoluteSum[item] + excess);
            double consumed = 0.5 * (State.AbsoluteSum[item] - excess);
            double ratio = (consumed + Math.Max(Total[item], 0)) / (produced + Math.Max(-Total[item], 0));
            double sensitivity = Math.Max(1, State.Hessian[(item * State.Count) + item] / State.AbsoluteSum[item]);
            State.X[item] += Math.Clamp(Math.Log(ratio) / (2 * sensitivity), -5, 5);
        }
    }

    private double Largest(double[] change)
    {
        double largest = 0;
        for (int item = 0; item < State.Count; item++)
        {
            double size = Math.Abs(change[item]);
            largest = size <= largest ? largest : size;
        }

        return largest;
    }
}
