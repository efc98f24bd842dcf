namespace Sequencer.Plant.Chemistry;

/// <summary>
/// The dissolved species of the components that are present: their molalities from the components' activities, and the sums
/// and derivatives that Newton's method needs. Unknowns are x, the natural logarithms of the components' activities, and the
/// ionic strength I. Arrays are allocated once; only the first <see cref="Count"/> components of them are in use.
/// </summary>
internal sealed class Speciation
{
    private const double LargestLnMolality = 30;
    private const double SmallestWaterActivity = 0.5;

    private readonly SparseReactions species;
    private readonly ActivityClasses activities;
    private readonly int[] compactOf;
    private readonly int[] presentSpecies;
    private readonly int[] start;
    private readonly int[] component;
    private readonly double[] coefficient;
    private int speciesCount;

    public Speciation(ChemicalSystem system, ActivityModel model)
    {
        species = new(system, [.. system.Species.Select(item => item.Formation)], [.. system.Species.Select(item => item.Constant)]);
        activities = new(system, model);
        int components = system.Components.Length + 1;
        compactOf = new int[components];
        presentSpecies = new int[system.Species.Length];
        start = new int[system.Species.Length + 1];
        component = new int[species.Component.Length];
        coefficient = new double[species.Component.Length];
        ComponentAt = new int[components];
        X = new double[components];
        Molality = new double[system.Species.Length];
        Sum = new double[components];
        AbsoluteSum = new double[components];
        Hessian = new double[components * components];
        IonicSlope = new double[components];
        StrengthSlope = new double[components];
    }

    /// <summary>How many components are present, the proton (place 0) among them.</summary>
    public int Count { get; private set; }

    /// <summary>The component (0 = proton, j + 1 = j of the system) at each place in use.</summary>
    public int[] ComponentAt { get; }

    /// <summary>ln activity of each component in use.</summary>
    public double[] X { get; }

    /// <summary>mol/kg water of each species of the system; 0 where a component is absent.</summary>
    public double[] Molality { get; }

    /// <summary>Dissolved total of each component in use, the sum of coefficient times molality, mol/kg.</summary>
    public double[] Sum { get; }

    /// <summary>The same sum of absolute terms: the scale against which a balance is judged.</summary>
    public double[] AbsoluteSum { get; }

    /// <summary>d Sum[j]/d x[k], row by row with <see cref="Count"/> columns, lower triangle.</summary>
    public double[] Hessian { get; }

    /// <summary>-d Sum[j]/d I.</summary>
    public double[] IonicSlope { get; }

    /// <summary>d(half the sum of z^2 m)/d x[j].</summary>
    public double[] StrengthSlope { get; }

    /// <summary>-d(half the sum of z^2 m)/d I.</summary>
    public double StrengthSelfSlope { get; private set; }

    /// <summary>Half the sum of z^2 m, mol/kg, of the molalities as evaluated.</summary>
    public double CalculatedStrength { get; private set; }

    public double WaterActivity { get; private set; } = 1;

    public void SetTemperature(double celsius)
    {
        species.SetTemperature(celsius);
        activities.SetTemperature(celsius);
    }

    /// <summary>Takes the components that are present into use; X must be set afterwards.</summary>
    public void SetPresence(ReadOnlySpan<bool> present)
    {
        Count = 0;
        for (int item = 0; item < present.Length; item++)
        {
            compactOf[item] = present[item] ? Count : -1;
            if (present[item])
            {
                ComponentAt[Count++] = item;
            }
        }

        Array.Clear(Molality);
        speciesCount = 0;
        int terms = 0;
        for (int row = 0; row < Molality.Length; row++)
        {
            if (species.IsPresent(row, present))
            {
                terms = CopyTerms(row, terms);
                presentSpecies[speciesCount++] = row;
                start[speciesCount] = terms;
            }
        }
    }

    /// <summary>Forgets the activity of water that the last solution left.</summary>
    public void ResetWater() => WaterActivity = 1;

    /// <summary>Molalities, sums and derivatives at X, ionic strength <paramref name="strength"/> and the last activity of water.</summary>
    public void Evaluate(double strength)
    {
        activities.Evaluate(strength);
        Clear();
        double lnWater = Math.Log(WaterActivity);
        double solutes = 0;
        for (int place = 0; place < speciesCount; place++)
        {
            int row = presentSpecies[place];
            int activity = activities.ClassOf[row];
            double lnMolality = species.LnConstant[row] + (species.Water[row] * lnWater) - activities.LnCoefficient[activity];
            for (int term = start[place]; term < start[place + 1]; term++)
            {
                lnMolality += coefficient[term] * X[component[term]];
            }

            double molality = Math.Exp(Math.Min(lnMolality, LargestLnMolality));
            Molality[row] = molality;
            solutes += molality;
            Accumulate(place, molality, activities.LnSlope[activity], activities.HalfChargeSquared[activity]);
        }

        if (activities.Model == ActivityModel.FromData)
        {
            // The reference program's approximation of Raoult's law for the activity of water (Garrels and Christ, 1965).
            // Relaxed, because in strong alkali the species answer to the activity of water and the plain update would swing.
            double target = Math.Max(SmallestWaterActivity, 1 - (0.017 * solutes));
            WaterActivity += (target - WaterActivity) / (1 + (0.05 * solutes));
        }
    }

    private void Accumulate(int place, double molality, double slope, double halfChargeSquared)
    {
        CalculatedStrength += halfChargeSquared * molality;
        StrengthSelfSlope += halfChargeSquared * molality * slope;
        int first = start[place];
        for (int term = first; term < start[place + 1]; term++)
        {
            int row = component[term];
            double share = coefficient[term] * molality;
            Sum[row] += share;
            AbsoluteSum[row] += Math.Abs(share);
            IonicSlope[row] += share * slope;
            StrengthSlope[row] += share * halfChargeSquared;
            for (int other = first; other <= term; other++)
            {
                Hessian[(row * Count) + component[other]] += share * coefficient[other];
            }
        }
    }

    private void Clear()
    {
        CalculatedStrength = 0;
        StrengthSelfSlope = 0;
        Array.Clear(Sum, 0, Count);
        Array.Clear(AbsoluteSum, 0, Count);
        Array.Clear(IonicSlope, 0, Count);
        Array.Clear(StrengthSlope, 0, Count);
        Array.Clear(Hessian, 0, Count * Count);
    }

    private int CopyTerms(int row, int terms)
    {
        for (int term = species.Start[row]; term < species.Start[row + 1]; term++)
        {
            component[terms] = compactOf[species.Component[term]];
            coefficient[terms++] = species.Coefficient[term];
        }

        return terms;
    }
}
