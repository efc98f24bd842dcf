namespace Sequencer.Plant.Chemistry;

/// <summary>
/// One linear step for the unknowns x (ln activities), I (ionic strength) and the amounts n of the solids present:
/// <c>H dx - b dI + A'dn = R</c>, <c>A dx = q</c>, <c>c dx - (1 + e) dI = -p</c>. H is the symmetric positive definite Hessian
/// of the convex function sum m - T x, so its Cholesky factor serves all right sides and the rest is eliminated by it.
/// </summary>
internal sealed class NewtonStep
{
    private readonly double[] solved;
    private readonly double[] border;
    private readonly double[] borderRight;

    public NewtonStep(int components, int solids)
    {
        Dx = new double[components];
        AmountChange = new double[solids];
        solved = new double[(solids + 2) * components];
        border = new double[(solids + 1) * (solids + 1)];
        borderRight = new double[solids + 1];
    }

    public double[] Dx { get; }

    /// <summary>Changes of the amounts of the solids present, mol/kg, in the order of the rows of A.</summary>
    public double[] AmountChange { get; }

    public double StrengthChange { get; private set; }

    /// <summary>Solves for the step; false if the border is singular, as with two solids present of the same composition.</summary>
    /// <param name="state">H, b, c, e; H is overwritten by its factor.</param>
    /// <param name="residual">R, total less what is dissolved and in solids, mol/kg.</param>
    /// <param name="solidRows">A: coefficients of the solids present, row by row with as many columns as components in use.</param>
    /// <param name="deficit">q: ln K less ln of the ion activity product of each solid present.</param>
    /// <param name="strengthMismatch">p: calculated less assumed ionic strength, mol/kg; null holds the ionic strength.</param>
    public bool Solve(Speciation state, ReadOnlySpan<double> residual, ReadOnlySpan<double> solidRows, ReadOnlySpan<double> deficit, double? strengthMismatch)
    {
        int count = state.Count;
        int solids = deficit.Length;
        DenseSolver.Factor(state.Hessian, count);
        Span<double> fromResidual = solved.AsSpan(0, count);
        residual[..count].CopyTo(fromResidual);
        DenseSolver.Substitute(state.Hessian, fromResidual);
        for (int solid = 0; solid < solids; solid++)
        {
            Span<double> row = solved.AsSpan((solid + 2) * count, count);
            solidRows.Slice(solid * count, count).CopyTo(row);
            DenseSolver.Substitute(state.Hessian, row);
        }

        Span<double> fromStrength = solved.AsSpan(count, count);
        state.IonicSlope.AsSpan(0, count).CopyTo(fromStrength);
        if (strengthMismatch is not null)
        {
            DenseSolver.Substitute(state.Hessian, fromStrength);
        }

        FillBorder(state, solidRows, deficit, strengthMismatch);
        int size = strengthMismatch is null ? solids : solids + 1;
        if (!DenseSolver.Eliminate(border, borderRight, size, solids + 1))
        {
            return false;
        }

        StrengthChange = strengthMismatch is null ? 0 : borderRight[solids];
        borderRight.AsSpan(0, solids).CopyTo(AmountChange);
        for (int item = 0; item < count; item++)
        {
            double change = fromResidual[item] + (fromStrength[item] * StrengthChange);
            for (int solid = 0; solid < solids; solid++)
            {
                change -= solved[((solid + 2) * count) + item] * AmountChange[solid];
            }

            Dx[item] = change;
        }

        return true;
    }

    private void FillBorder(Speciation state, ReadOnlySpan<double> solidRows, ReadOnlySpan<double> deficit, double? mismatch)
    {
        int count = state.Count;
        int solids = deficit.Length;
        int width = solids + 1;
        for (int equation = 0; equation < width; equation++)
        {
            ReadOnlySpan<double> left = equation < solids ? solidRows.Slice(equation * count, count) : state.StrengthSlope.AsSpan(0, count);
            for (int solid = 0; solid < solids; solid++)
            {
                border[(equation * width) + solid] = -DenseSolver.Dot(left, solved.AsSpan((solid + 2) * count, count));
            }

            border[(equation * width) + solids] = DenseSolver.Dot(left, solved.AsSpan(count, count));
            borderRight[equation] = (equation < solids ? deficit[equation] : -(mismatch ?? 0)) - DenseSolver.Dot(left, solved.AsSpan(0, count));
        }

        border[(solids * width) + solids] -= 1 + state.StrengthSelfSlope;
    }
}
