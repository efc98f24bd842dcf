using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>The waters of the tanks by their equilibria, each followed along the steps of the equations as closely as it bends.</summary>
internal sealed class TankWaters
{
    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly WaterChemistry[] _chemistry;
    private readonly WaterTrace[] _acidity;

    /// <summary>Of the tanks in which conductivity is measured, with a chemistry of its own, so that looking changes no pH; null elsewhere.</summary>
    private readonly WaterTrace?[] _conductivity;
    private readonly WaterTrace[] _traces;
    private readonly List<WaterChemistry> _looking = [];
    private readonly double[] _dissolved;

    /// <summary>Substances that filters and settlers hold and of which solids may form.</summary>
    private readonly int[] _partlySolid;

    /// <summary>By tank: something settles there, or a filter draws from it.</summary>
    private readonly bool[] _separates;

    public TankWaters(PlantParts parts, PlantMotion motion)
    {
        _parts = parts;
        _motion = motion;
        _dissolved = new double[parts.Contents.Dissolved.Length];
        _chemistry = [.. parts.Tanks.Select(_ => new WaterChemistry(parts.Contents, parts.Model.Precipitates))];
        _acidity = [.. parts.Tanks.Select(tank => new WaterTrace(time => Solved(tank, _chemistry[tank.Index], time).Ph, 0.0))];
        _conductivity = [.. parts.Tanks.Select(tank => parts.Model.Measures(Measured.Conductivity, tank.Description.Name) ? ConductivityTrace(tank) : null)];
        _traces = [.. _acidity, .. _conductivity.OfType<WaterTrace>()];
        _partlySolid = [.. parts.Model.Retained.Select(retained => parts.Contents.Dissolved.IndexOf(retained.Substance)).Where(place => place >= 0 && _chemistry[0].CanBeSolid(place))];
        _separates = [.. parts.Tanks.Select(tank => parts.Settlers.Any(settler => settler.Tank == tank.Index) || parts.Separators.Any(separator => separator.Trough == tank))];
    }

    public long EquilibriaSolved => _chemistry.Concat(_looking).Sum(chemistry => chemistry.Solved);

    public double Ph(int tank) => _acidity[tank].Value(_motion.Time, _motion.End);

    public bool HasConductivity(int tank) => _conductivity[tank] is not null;

    /// <summary>mS/cm at the water's temperature, in a tank that <see cref="HasConductivity"/>; its trace is of the logarithm.</summary>
    public double Conductivity(int tank) => _conductivity[tank] is { } trace
        ? Math.Exp(trace.Value(_motion.Time, _motion.End))
        : throw new InvalidOperationException($"conductivity of {_parts.Tanks[tank].Description.Name} is not followed");

    /// <summary>Grams of solids in a litre that the last water whose pH was solved has formed.</summary>
    public double PrecipitateGramsPerLitre(int tank) => _chemistry[tank].SolidGramsPerLitre();

    /// <summary>mol/L of prussic acid in the last water whose pH was solved.</summary>
    public double HydrogenCyanide(int tank) => _chemistry[tank].HydrogenCyanide;

    /// <summary>mV that a redox probe sees in a tank of a plant with chromium(VI) and sulphite, or with cyanide and hypochlorite.</summary>
    public double Millivolts(int tank) => RedoxPotential.Millivolts(
        _parts.Contents, _motion.Now.Slice(_parts.Layout.Mixed(tank), _parts.Contents.Count), _motion.Now[_parts.Layout.Volume(tank)], Ph(tank));

    public double ChargeImbalance() =>
        _chemistry.Select(chemistry => Math.Abs(chemistry.ChargeImbalance())).DefaultIfEmpty(0.0).Max();

    /// <summary>Tanks in which activities have been a guess, parted by commas.</summary>
    public string TooStrong() => string.Join(", ", _parts.Tanks.Where(tank => _chemistry[tank.Index].WasTooStrong).Select(tank => tank.Description.Name));

    /// <summary>To be called before the next step: the last one's states are not there any more after it.</summary>
    public void FollowToEnd()
    {
        foreach (WaterTrace trace in _traces)
        {
            trace.Value(_motion.End, _motion.End);
        }
    }

    /// <summary>Forgets what is beyond a time: the plant goes on differently from there.</summary>
    public void Truncate(double time)
    {
        foreach (WaterTrace trace in _traces)
        {
            trace.Truncate(time);
        }
    }

    /// <summary>Tells the equations of the water whose pH was solved last in each tank that has undissolved lime.</summary>
    public void TakeLimeSaturation()
    {
        foreach (TankBody tank in _parts.Tanks)
        {
            if (_motion.StateAtEnd[_parts.Layout.Mixed(tank.Index) + _parts.Contents.Lime] > 0.0)
            {
                (double share, double calcium) = _chemistry[tank.Index].LimeSaturation();
                _motion.Equations.TakeLimeSaturation(tank.Index, share, calcium);
            }
        }
    }

    /// <summary>Tells the plant of the water whose pH was solved last in each tank; true if it changes what settles or is filtered.</summary>
    public bool TakeSolubility()
    {
        bool changes = false;
        foreach (TankBody tank in _parts.Tanks)
        {
            WaterChemistry chemistry = _chemistry[tank.Index];
            foreach (int substance in _partlySolid)
            {
                bool isSeen = _parts.Solubility.Take(tank.Index, substance, chemistry.Dissolved(substance), chemistry.Total(substance));
                changes |= isSeen && _separates[tank.Index];
            }
        }

        return changes;
    }

    private WaterTrace ConductivityTrace(TankBody tank)
    {
        WaterChemistry chemistry = new(_parts.Contents, _parts.Model.Precipitates);
        _looking.Add(chemistry);
        return new WaterTrace(time => Math.Log(Solved(tank, chemistry, time).Conductivity()), 0.0);
    }

    private WaterChemistry Solved(TankBody tank, WaterChemistry chemistry, double time)
    {
        double litres = _motion.At(time, _parts.Layout.Volume(tank.Index));
        for (int substance = 0; substance < _dissolved.Length; substance++)
        {
            double amount = _motion.At(time, _parts.Layout.Mixed(tank.Index) + substance);
            _dissolved[substance] = amount < 0.0 && amount >= -PhysicalBounds.MayBeMissing(litres)
                ? Math.Max(amount / litres, EquilibriumSolver.MostNegativeTotal)
                : amount / litres;
        }

        double celsius = _motion.At(time, _parts.Layout.Heat(tank.Index)) / litres;
        EquilibriumOutcome outcome = chemistry.Solve(_dissolved, celsius);
        if (!outcome.IsSolved)
        {
            _motion.FailAt(new PlantFailure("equilibrium of the water", tank.Description.Name, time, outcome.Describe()));
        }

        return chemistry;
    }
}
