namespace Sequencer.Plant.Chemistry;

/// <summary>
/// Finds the equilibrium of a chemical system. Reusable and not thread-safe: it allocates in the constructor only, and starts
/// each solve from the last solution. Results are valid after a solve that <see cref="EquilibriumOutcome.IsSolved"/>, and stay
/// those of the last such solve if a later one fails.
/// </summary>
/// <remarks>
/// Activities by Davies' equation are not to be trusted above an ionic strength of about 0.5 mol/kg
/// (<see cref="IsBeyondDavies"/>). A result supports review by a competent person; it is no proof about real water.
/// </remarks>
public sealed class EquilibriumSolver
{
    /// <summary>mol/kg: above this a result carries the warning <see cref="IsBeyondDavies"/>.</summary>
    public const double LargestStrengthForDavies = 0.5;

    /// <summary>mol/kg: above this activity coefficients are held at their values here.</summary>
    public const double LargestStrengthForActivity = 2;

    /// <summary>mol/kg: a component with a total of no more than this is absent.</summary>
    public const double AbsentTotal = 1e-16;

    /// <summary>mol/kg: a total more negative than this is refused; between this and 0 the component counts as absent.</summary>
    public const double MostNegativeTotal = -1e-6;

    private readonly Speciation state;
    private readonly PresentSolids solids;
    private readonly BalanceProblem problem;
    private readonly bool[] present;
    private readonly bool[] wasPresent;
    private readonly double[] dissolved;
    private readonly double[] solidAmount;
    private readonly double[] lnSaturation;
    private readonly double[] molality;
    private double temperature = double.NaN;
    private bool isWarm;
    private bool wasHeld;

    public EquilibriumSolver(ChemicalSystem system, ActivityModel model = ActivityModel.FromData)
    {
        System = system;
        Model = model;
        state = new(system, model);
        solids = new(system);
        problem = new(state, solids);
        present = new bool[system.Components.Length + 1];
        wasPresent = new bool[system.Components.Length + 1];
        dissolved = new double[system.Components.Length];
        solidAmount = new double[system.Solids.Length];
        lnSaturation = new double[system.Solids.Length];
        molality = new double[system.Species.Length];
    }

    public ChemicalSystem System { get; }

    public ActivityModel Model { get; }

    /// <summary>-log10 of the proton's activity.</summary>
    public double Ph { get; private set; } = 7;

    /// <summary>mol/kg water.</summary>
    public double IonicStrength { get; private set; }

    public double WaterActivity { get; private set; } = 1;

    /// <summary>
    /// Charge of the dissolved species, eq/kg water: 0 unless the pH was held. Then it is the strong acid (positive) or strong
    /// base (negative) that must be there beside the totals given.
    /// </summary>
    public double Charge { get; private set; }

    /// <summary>Dissolved total of each component, mol/kg water, in the order of <see cref="ChemicalSystem.Components"/>.</summary>
    public ReadOnlySpan<double> Dissolved => dissolved;

    /// <summary>Amount of each solid, mol per kg water, in the order of <see cref="ChemicalSystem.Solids"/>.</summary>
    public ReadOnlySpan<double> SolidAmounts => solidAmount;

    /// <summary>mol/kg water of each species, in the order of <see cref="ChemicalSystem.Species"/>.</summary>
    public ReadOnlySpan<double> Molality => molality;

    /// <summary>True if the ionic strength is above <see cref="LargestStrengthForDavies"/>: the activities are then a guess.</summary>
    public bool IsBeyondDavies => Model == ActivityModel.FromData && IonicStrength > LargestStrengthForDavies;

    /// <summary>Ion activity product over K of a solid, whether allowed or not; 0 where it lacks a component.</summary>
    public double SaturationRatio(int solid) => Math.Exp(lnSaturation[solid]);

    /// <summary>log10 of <see cref="SaturationRatio"/>; negative infinity where the solid lacks a component.</summary>
    public double SaturationIndex(int solid) => lnSaturation[solid] / Math.Log(10);

    /// <summary>Forgets the last solution, so that the next solve does not depend on the history.</summary>
    public void Reset() => isWarm = false;

    /// <summary>Equilibrium with the pH closed by the balance of charge.</summary>
    /// <param name="totals">mol per kg water of each component, dissolved and in the allowed solids together, in the order of
    /// <see cref="ChemicalSystem.Components"/>: 1 mmol of Ca(OH)2 is 1e-3 of <c>Ca+2</c>.</param>
    /// <param name="celsius">temperature, 0 to 100 C</param>
    /// <param name="allowedSolids">which solids may form, in the order of <see cref="ChemicalSystem.Solids"/></param>
    /// <exception cref="ArgumentException">an array's length is wrong</exception>
    public EquilibriumOutcome Solve(ReadOnlySpan<double> totals, double celsius, ReadOnlySpan<bool> allowedSolids) =>
        Solve(totals, celsius, allowedSolids, null);

    /// <summary>Equilibrium at a given pH; <see cref="Charge"/> tells the strong acid or base that this supposes.</summary>
    /// <inheritdoc cref="Solve(ReadOnlySpan{double}, double, ReadOnlySpan{bool})"/>
    public EquilibriumOutcome SolveAtPh(ReadOnlySpan<double> totals, double celsius, double ph, ReadOnlySpan<bool> allowedSolids) =>
        Solve(totals, celsius, allowedSolids, ph);

    private EquilibriumOutcome Solve(ReadOnlySpan<double> totals, double celsius, ReadOnlySpan<bool> allowed, double? ph)
    {
        if (totals.Length != dissolved.Length || allowed.Length != solidAmount.Length)
        {
            throw new ArgumentException($"{totals.Length} totals and {allowed.Length} solids given, {dissolved.Length} and {solidAmount.Length} wanted");
        }

        EquilibriumOutcome input = CheckInput(totals, celsius, ph);
        if (!input.IsSolved)
        {
            return input;
        }

        Prepare(totals, celsius, allowed, ph);
        EquilibriumOutcome outcome = SettleSolids();
        isWarm = outcome.IsSolved;
        if (isWarm)
        {
            TakeResults();
        }

        return outcome;
    }

    private EquilibriumOutcome CheckInput(ReadOnlySpan<double> totals, double celsius, double? ph)
    {
        if (!(celsius is >= 0 and <= 100))
        {
            return new(EquilibriumStatus.TemperatureOutOfRange, "temperature", celsius);
        }

        if (ph is not null and not (>= -1 and <= 15))
        {
            return new(EquilibriumStatus.PhOutOfRange, "pH", ph.Value);
        }

        for (int item = 0; item < totals.Length; item++)
        {
            if (!(totals[item] >= MostNegativeTotal && double.IsFinite(totals[item])))
            {
                return new(EquilibriumStatus.TotalOutOfRange, System.Components[item].Name, totals[item]);
            }
        }

        return EquilibriumOutcome.Solved;
    }

    private void Prepare(ReadOnlySpan<double> totals, double celsius, ReadOnlySpan<bool> allowed, double? ph)
    {
        if (celsius != temperature)
        {
            temperature = celsius;
            state.SetTemperature(celsius);
            solids.SetTemperature(celsius);
        }

        present[0] = true;
        for (int item = 0; item < totals.Length; item++)
        {
            present[item + 1] = totals[item] > AbsentTotal;
        }

        isWarm &= present.AsSpan().SequenceEqual(wasPresent) && wasHeld == ph.HasValue;
        if (!isWarm)
        {
            present.CopyTo(wasPresent, 0);
            state.SetPresence(present);
            solids.Clear();
        }

        wasHeld = ph.HasValue;
        solids.PhHeld = wasHeld;
        solids.SetPossible(allowed, present, state);
        TakeTotals(totals);
        if (ph is not null)
        {
            state.X[0] = -ph.Value * Math.Log(10);
        }

        problem.Equations.PhHeld = wasHeld;
        if (!isWarm)
        {
            problem.Restart();
        }
    }

    private void TakeTotals(ReadOnlySpan<double> totals)
    {
        double charge = 0;
        for (int place = 1; place < state.Count; place++)
        {
            int component = state.ComponentAt[place] - 1;
            problem.Equations.Total[place] = totals[component];
            charge += totals[component] * System.Components[component].Charge;
        }

        problem.Equations.Total[0] = -charge;
    }

    /// <summary>
    /// Solves for one set of solids after another, adding the most supersaturated and removing the most negative. In strong
    /// water that can go round in a circle, since the solid changes the ionic strength and with it its own saturation: then
    /// the strength is bracketed and the solids are found for each strength tried.
    /// </summary>
    private EquilibriumOutcome SettleSolids()
    {
        int limit = 4 + (2 * solids.Capacity);
        for (int change = 0; change < limit; change++)
        {
            if (!problem.Solve())
            {
                return new(EquilibriumStatus.BalanceNotClosed, PlaceName(problem.Equations.WorstPlace), problem.Equations.WorstResidual);
            }

            if (!solids.Exchange(state, lenient: change > limit / 2))
            {
                return EquilibriumOutcome.Solved;
            }
        }

        if (problem.SolveWithSolids() && !solids.Exchange(state, lenient: true))
        {
            return EquilibriumOutcome.Solved;
        }

        int worst = solids.LastExchanged;
        return new(EquilibriumStatus.SolidsNotSettled, System.Solids[worst].Name, solids.LnSaturation(worst, state) / Math.Log(10));
    }

    private string PlaceName(int place)
    {
        if (place >= state.Count)
        {
            return "ionic strength";
        }

        return place == 0 ? "charge" : System.Components[state.ComponentAt[place] - 1].Name;
    }

    private void TakeResults()
    {
        Ph = -state.X[0] / Math.Log(10);
        IonicStrength = state.CalculatedStrength;
        WaterActivity = state.WaterActivity;
        state.Molality.CopyTo(molality, 0);
        Array.Clear(dissolved);
        double charge = 0;
        for (int place = 0; place < state.Count; place++)
        {
            int component = state.ComponentAt[place] - 1;
            charge += state.Sum[place] * (component < 0 ? 1 : System.Components[component].Charge);
            if (component >= 0)
            {
                dissolved[component] = state.Sum[place];
            }
        }

        Charge = wasHeld ? charge : 0;
        Array.Clear(solidAmount);
        for (int place = 0; place < solids.Count; place++)
        {
            solidAmount[solids.SolidAt(place)] = Math.Max(0, solids.Amount(place));
        }

        for (int solid = 0; solid < lnSaturation.Length; solid++)
        {
            lnSaturation[solid] = solids.LnSaturation(solid, state);
        }
    }
}
