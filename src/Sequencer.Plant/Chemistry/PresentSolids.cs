namespace Sequencer.Plant.Chemistry;

/// <summary>The solids taken as present, their amounts, and what they take out of each component's balance.</summary>
internal sealed class PresentSolids
{
    private const double SaturationTolerance = 1e-9;
    private const double LenientTolerance = 1e-6;
    private const double NegativeTolerance = 1e-8;
    private readonly SparseReactions reactions;
    private readonly double[] rows;
    private readonly double[] deficit;
    private readonly double[] amount;
    private readonly int[] solidAt;
    private readonly int[] compactOf;
    private readonly bool[] possible;
    private readonly double[] gram;
    private readonly double[] shift;

    public PresentSolids(ChemicalSystem system)
    {
        reactions = new(system, [.. system.Solids.Select(item => item.Dissolution)], [.. system.Solids.Select(item => item.Constant)]);
        Capacity = system.Solids.Length;
        rows = new double[Capacity * (system.Components.Length + 1)];
        deficit = new double[Capacity];
        amount = new double[Capacity];
        solidAt = new int[Capacity];
        possible = new bool[Capacity];
        gram = new double[Capacity * Capacity];
        shift = new double[Capacity];
        compactOf = new int[system.Components.Length + 1];
    }

    public int Capacity { get; }

    public int Count { get; private set; }

    /// <summary>The solid of the system that came or went last; -1 before.</summary>
    public int LastExchanged { get; private set; } = -1;

    /// <summary>The solid of the system at a place.</summary>
    public int SolidAt(int place) => solidAt[place];

    /// <summary>mol per kg water of the solid at a place.</summary>
    public double Amount(int place) => amount[place];

    /// <summary>Where the pH is held the proton's balance falls away, and with it the solids' share of protons.</summary>
    public bool PhHeld { get; set; }

    public void SetTemperature(double celsius) => reactions.SetTemperature(celsius);

    /// <summary>Which solids may form, from those allowed and the components in use; removes those present that may not.</summary>
    public void SetPossible(ReadOnlySpan<bool> allowed, ReadOnlySpan<bool> componentPresent, Speciation state)
    {
        Array.Fill(compactOf, -1);
        for (int place = 0; place < state.Count; place++)
        {
            compactOf[state.ComponentAt[place]] = place;
        }

        for (int solid = 0; solid < Capacity; solid++)
        {
            possible[solid] = allowed[solid] && reactions.IsPresent(solid, componentPresent);
        }

        int kept = 0;
        for (int place = 0; place < Count; place++)
        {
            if (possible[solidAt[place]])
            {
                solidAt[kept] = solidAt[place];
                amount[kept++] = amount[place];
            }
        }

        Count = kept;
        FillRows(state.Count);
    }

    public void Clear() => Count = 0;

    public void Add(int solid, int componentCount)
    {
        solidAt[Count] = solid;
        amount[Count++] = 0;
        FillRows(componentCount);
    }

    public void RemoveAt(int place, int componentCount)
    {
        Count--;
        for (int item = place; item < Count; item++)
        {
            solidAt[item] = solidAt[item + 1];
            amount[item] = amount[item + 1];
        }

        FillRows(componentCount);
    }

    /// <summary>Takes out the most negative solid or else takes in the most supersaturated; false where there is neither.</summary>
    public bool Exchange(Speciation state, bool lenient)
    {
        int negative = MostNegative(state);
        if (negative >= 0)
        {
            LastExchanged = solidAt[negative];
            RemoveAt(negative, state.Count);
            return true;
        }

        int supersaturated = MostSupersaturated(state, lenient);
        if (supersaturated < 0)
        {
            return false;
        }

        LastExchanged = supersaturated;
        Add(supersaturated, state.Count);
        return true;
    }

    /// <summary>The place of the solid whose amount is negative beyond rounding, against what is dissolved, and most so; or -1.</summary>
    private int MostNegative(Speciation state)
    {
        int worst = -1;
        double least = -NegativeTolerance;
        for (int place = 0; place < Count; place++)
        {
            double relative = amount[place] / LeastDissolved(place, state);
            if (relative < least)
            {
                least = relative;
                worst = place;
            }
        }

        return worst;
    }

    /// <summary>
    /// The solid not present whose saturation index is largest and above 0, or -1. A solid on the very
    /// border comes and goes by rounding: with <paramref name="lenient"/> so little counts as none.
    /// </summary>
    public int MostSupersaturated(Speciation state, bool lenient)
    {
        int worst = -1;
        double largest = lenient ? LenientTolerance : SaturationTolerance;
        for (int solid = 0; solid < Capacity; solid++)
        {
            if (possible[solid] && Array.IndexOf(solidAt, solid, 0, Count) < 0 && LnSaturation(solid, state) > largest)
            {
                largest = LnSaturation(solid, state);
                worst = solid;
            }
        }

        return worst;
    }

    /// <summary>ln of ion activity product over K of a solid of the system; negative infinity where a component is absent.</summary>
    public double LnSaturation(int solid, Speciation state)
    {
        double ln = (reactions.Water[solid] * Math.Log(state.WaterActivity)) - reactions.LnConstant[solid];
        for (int term = reactions.Start[solid]; term < reactions.Start[solid + 1]; term++)
        {
            int place = compactOf[reactions.Component[term]];
            if (place < 0)
            {
                return double.NegativeInfinity;
            }

            ln += reactions.Coefficient[term] * state.X[place];
        }

        return ln;
    }

    /// <summary>Coefficients of the solids present, row by row.</summary>
    public ReadOnlySpan<double> Rows(int componentCount) => rows.AsSpan(0, Count * componentCount);

    /// <summary>-ln saturation of each solid present.</summary>
    public ReadOnlySpan<double> Deficit(Speciation state)
    {
        for (int place = 0; place < Count; place++)
        {
            deficit[place] = -LnSaturation(solidAt[place], state);
        }

        return deficit.AsSpan(0, Count);
    }

    public bool AreSaturated(Speciation state)
    {
        for (int place = 0; place < Count; place++)
        {
            if (!(Math.Abs(LnSaturation(solidAt[place], state)) < SaturationTolerance))
            {
                return false;
            }
        }

        return true;
    }

    public void Move(ReadOnlySpan<double> change, double fraction)
    {
        for (int place = 0; place < Count; place++)
        {
            amount[place] += fraction * change[place];
        }
    }

    /// <summary>What the solids present hold of a component, mol/kg.</summary>
    public double Share(int component, int componentCount)
    {
        double share = 0;
        for (int place = 0; place < Count; place++)
        {
            share += rows[(place * componentCount) + component] * amount[place];
        }

        return share;
    }

    /// <summary>The shortest move of x that saturates the water with every solid present; false if two are of one composition.</summary>
    public bool Project(Speciation state)
    {
        int width = state.Count;
        Deficit(state).CopyTo(shift);
        for (int place = 0; place < Count; place++)
        {
            for (int other = 0; other < Count; other++)
            {
                gram[(place * Count) + other] = DenseSolver.Dot(rows.AsSpan(place * width, width), rows.AsSpan(other * width, width));
            }
        }

        if (!DenseSolver.Eliminate(gram, shift, Count, Count))
        {
            return false;
        }

        for (int item = 0; item < width; item++)
        {
            for (int place = 0; place < Count; place++)
            {
                state.X[item] += rows[(place * width) + item] * shift[place];
            }
        }

        return true;
    }

    /// <summary>The smallest dissolved total among the solid's components other than the proton, mol/kg.</summary>
    private double LeastDissolved(int place, Speciation state)
    {
        double least = double.PositiveInfinity;
        for (int item = 1; item < state.Count; item++)
        {
            if (rows[(place * state.Count) + item] != 0)
            {
                least = Math.Min(least, state.AbsoluteSum[item]);
            }
        }

        return least;
    }

    private void FillRows(int componentCount)
    {
        Array.Clear(rows);
        for (int place = 0; place < Count; place++)
        {
            int solid = solidAt[place];
            for (int term = reactions.Start[solid]; term < reactions.Start[solid + 1]; term++)
            {
                rows[(place * componentCount) + compactOf[reactions.Component[term]]] = reactions.Coefficient[term];
            }

            if (PhHeld)
            {
                rows[place * componentCount] = 0;
            }
        }
    }
}
