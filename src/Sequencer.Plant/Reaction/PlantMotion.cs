using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// Carries the equations from scan to scan. It steps ahead as far as the error allows while nothing
/// is commanded, reads the state at each scan from the step's continuous extension, and cuts the
/// step where a command, a fault, a full or a drawn-down tank changes the equations.
/// </summary>
internal sealed class PlantMotion
{
    private const double RelativeTolerance = 1e-6;
    private const double FirstStep = 0.5;

    /// <summary>s; explicit steps that stability holds below this are dearer than implicit ones, with some hundred numbers in a plant's state.</summary>
    private const double ShortStep = 0.1;

    /// <summary>Cap on one step, s: bounds how much is thrown away when a command comes.</summary>
    private const double LongestStep = 120.0;

    /// <summary>s; kinks closer than this to where a step begins are those that ended the last one.</summary>
    private const double SameTime = 1e-7;

    /// <summary>Relative to what is in the tank: a content more negative than rounding explains.</summary>
    private const double NegativeShare = 1e-6;

    /// <summary>
    /// mol or g: what steps may add up to, however little water there is. The error allowed in one is 1e-6, but by the root
    /// mean square of hundreds of values a single one may take twenty times that.
    /// </summary>
    private const double NegativeAmount = 1e-3;

    /// <summary>C; beyond these a tank holds no water (at the pressure of air), with some room for what the errors of steps add up to.</summary>
    private const double Frozen = -1.0;
    private const double Boiling = 105.0;

    private readonly PlantParts _parts;
    private StateTable _table;
    private SwitchingIntegrator _integrator;
    private TankLimits _limits;
    private KnifeTouch _knives;
    private readonly WaterChemistry[] _chemistry;
    private readonly WaterTrace[] _acidity;

    /// <summary>Of the tanks in which conductivity is measured, with a chemistry of its own, so that looking changes no pH; null elsewhere.</summary>
    private readonly WaterTrace?[] _conductivity;
    private readonly WaterTrace[] _traces;
    private readonly List<WaterChemistry> _looking = [];
    private double[] _now;
    private long _stepsBefore;
    private readonly double[] _dissolved;

    /// <summary>Substances that filters and settlers hold and of which solids may form.</summary>
    private readonly int[] _partlySolid;

    /// <summary>By tank: something settles there, or a filter draws from it.</summary>
    private readonly bool[] _separates;
    private bool _interrupted;

    /// <summary>Found in a step that runs ahead of the time now: it counts once that time comes, unless the equations change before.</summary>
    private PlantFailure? _ahead;

    public PlantMotion(PlantParts parts)
    {
        _parts = parts;
        Equations = new PlantEquations(
            parts.Layout, parts.Contents, parts.Tanks, parts.Sources, parts.DosingLines, parts.Pipes, parts.Separators, parts.Settlers,
            new TankReactions(parts.Layout, parts.Contents, parts.Tanks, parts.Model.Precipitates, parts.Model.Reactions),
            new TankAir(parts.Layout, parts.Contents, parts.Tanks, parts.Model.Precipitates),
            parts.Model.AmbientCelsius);
        _now = parts.InitialState();
        _dissolved = new double[parts.Contents.Dissolved.Length];
        (_table, _integrator, _limits, _knives) = Stepping();
        _chemistry = [.. parts.Tanks.Select(_ => new WaterChemistry(parts.Contents, parts.Model.Precipitates))];
        _acidity = [.. parts.Tanks.Select(tank => new WaterTrace(time => Solved(tank, _chemistry[tank.Index], time).Ph, 0.0))];
        _conductivity = [.. parts.Tanks.Select(tank => parts.Model.Measures(Measured.Conductivity, tank.Description.Name) ? ConductivityTrace(tank) : null)];
        _traces = [.. _acidity, .. _conductivity.OfType<WaterTrace>()];
        _partlySolid = [.. parts.Model.Retained.Select(retained => parts.Contents.Dissolved.IndexOf(retained.Substance)).Where(place => place >= 0 && _chemistry[0].CanBeSolid(place))];
        _separates = [.. parts.Tanks.Select(tank => parts.Settlers.Any(settler => settler.Tank == tank.Index) || parts.Separators.Any(separator => separator.Trough == tank))];
        TakeSolubility();
    }

    public PlantEquations Equations { get; }

    public double Time { get; private set; }

    public PlantFailure? Failure { get; private set; }

    /// <summary>The state now, laid out as <see cref="PlantParts.Layout"/> says.</summary>
    public ReadOnlySpan<double> Now => _now;

    public long Steps => _stepsBefore + _integrator.Accepted;

    public long EquilibriaSolved => _chemistry.Concat(_looking).Sum(chemistry => chemistry.Solved);

    public double Ph(int tank) => _acidity[tank].Value(Time, _integrator.End);

    public bool HasConductivity(int tank) => _conductivity[tank] is not null;

    /// <summary>mS/cm at the water's temperature, in a tank that <see cref="HasConductivity"/>; its trace is of the logarithm.</summary>
    public double Conductivity(int tank) => _conductivity[tank] is { } trace
        ? Math.Exp(trace.Value(Time, _integrator.End))
        : throw new InvalidOperationException($"conductivity of {_parts.Tanks[tank].Description.Name} is not followed");

    /// <summary>Grams of solids in a litre that the last water whose pH was solved has formed.</summary>
    public double PrecipitateGramsPerLitre(int tank) => _chemistry[tank].SolidGramsPerLitre();

    /// <summary>mol/L of prussic acid in the last water whose pH was solved.</summary>
    public double HydrogenCyanide(int tank) => _chemistry[tank].HydrogenCyanide;

    /// <summary>mV that a redox probe sees in a tank of a plant with chromium(VI) and sulphite, or with cyanide and hypochlorite.</summary>
    public double Millivolts(int tank) => RedoxPotential.Millivolts(
        _parts.Contents, _now.AsSpan(_parts.Layout.Mixed(tank), _parts.Contents.Count), _now[_parts.Layout.Volume(tank)], Ph(tank));

    public double ChargeImbalance() =>
        _chemistry.Select(chemistry => Math.Abs(chemistry.ChargeImbalance())).DefaultIfEmpty(0.0).Max();

    /// <summary>Tanks in which activities have been a guess, parted by commas.</summary>
    public string TooStrong() => string.Join(", ", _parts.Tanks.Where(tank => _chemistry[tank.Index].WasTooStrong).Select(tank => tank.Description.Name));

    /// <summary>Something that drives the equations changes now.</summary>
    public void Interrupt()
    {
        _interrupted = true;
        Equations.Flows.ForgetSums();
    }

    /// <summary>A tank gets a hole, or is mended, now. From the first one on the state has places for what leaks.</summary>
    public void Leak(TankBody tank, bool leaks)
    {
        tank.Leak(Time, leaks);
        if (!_parts.Layout.FollowsLeaks)
        {
            CutAt(Time);
            _parts.Layout.FollowsLeaks = true;
            Array.Resize(ref _now, _parts.Layout.Count);
            _stepsBefore = Steps;
            (_table, _integrator, _limits, _knives) = Stepping();
        }
    }

    public void AdvanceTo(double time)
    {
        if (_interrupted)
        {
            // Neither a limit nor a failure found further on than now was ever reached.
            CutAt(Time);
            _limits.LetGo();
            _ahead = null;
            _interrupted = false;
        }

        while (_integrator.End < time && _ahead is null)
        {
            foreach (WaterTrace trace in _traces)
            {
                trace.Value(_integrator.End, _integrator.End);
            }

            TakeLimeSaturation();
            if (TakeSolubility())
            {
                _integrator.Truncate(_integrator.End);
                Equations.Flows.ForgetSums();
            }

            Step();
        }

        if (_ahead is { } failure && failure.TimeSeconds <= time)
        {
            Failure ??= failure;
        }

        if (Failure is null)
        {
            Time = time;
            _integrator.Interpolate(time, _now);
        }
    }

    /// <summary>From the state now on.</summary>
    private (StateTable Table, SwitchingIntegrator Integrator, TankLimits Limits, KnifeTouch Knives) Stepping()
    {
        StateTable table = new(_parts);
        SwitchingIntegrator integrator = new(Equations.Rates, table.AllowedErrors(), RelativeTolerance, FirstStep, ShortStep);
        integrator.Restart(Time, _now);
        return (table, integrator, new TankLimits(_parts, integrator), new KnifeTouch(_parts, integrator));
    }

    private void Step()
    {
        double from = _integrator.End;
        if (!Step(Math.Min(from + LongestStep, Equations.NextKink(from + SameTime))))
        {
            return;
        }

        if (_knives.Time() is { } touch && touch > from + SameTime)
        {
            _integrator.TakeBack();
            if (!Step(touch))
            {
                return;
            }
        }

        TankLimit? first = _limits.First();
        while (first is { } limit && _limits.NearlyEmptiesATank())
        {
            _integrator.TakeBack();
            if (!Step(limit.Time))
            {
                return;
            }

            first = _limits.First();
        }

        CutAt(first);
        Check();
    }

    /// <summary>False where none is short enough.</summary>
    private bool Step(double limit)
    {
        if (_integrator.Step(limit) != StepOutcome.TooSmall)
        {
            return true;
        }

        StateNumber hindered = _table[_integrator.Hindrance];
        FailAhead(hindered.Equation, hindered.Place, "no step was small enough for the error allowed");
        return false;
    }

    /// <summary>Of the water whose pH was solved last in each tank that has undissolved lime.</summary>
    private void TakeLimeSaturation()
    {
        foreach (TankBody tank in _parts.Tanks)
        {
            if (_integrator.State[_parts.Layout.Mixed(tank.Index) + _parts.Contents.Lime] > 0.0)
            {
                (double share, double calcium) = _chemistry[tank.Index].LimeSaturation();
                Equations.TakeLimeSaturation(tank.Index, share, calcium);
            }
        }
    }

    /// <summary>Of the water whose pH was solved last in each tank; true if it changes what settles or is filtered.</summary>
    private bool TakeSolubility()
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

    private void CutAt(double time)
    {
        _integrator.Truncate(time);
        foreach (WaterTrace trace in _traces)
        {
            trace.Truncate(time);
        }
    }

    /// <summary>Ends the step where a tank reaches its limit, and lets go those that have left theirs by then.</summary>
    private void CutAt(TankLimit? first)
    {
        if (first is { } limit)
        {
            CutAt(limit.Time);
        }

        // Only what the step comes to counts: a tank that would have left its heel beyond the cut still stands at it.
        _limits.LetGo();
        if (first is { } reached)
        {
            reached.Tank.FullFrom = reached.IsRim ? Math.Min(reached.Tank.FullFrom, reached.Time) : reached.Tank.FullFrom;
            reached.Tank.DrawnDownFrom = reached.IsRim ? reached.Tank.DrawnDownFrom : Math.Min(reached.Tank.DrawnDownFrom, reached.Time);
        }
    }

    private void Check()
    {
        ReadOnlySpan<double> state = _integrator.State;
        foreach (TankBody tank in _parts.Tanks)
        {
            string place = tank.Description.Name;
            double litres = state[_parts.Layout.Volume(tank.Index)];
            if (!(litres > 0.0 && litres < tank.Description.OverflowLitres * 1.001))
            {
                FailAhead("balance of volume", place, FormattableString.Invariant($"the volume is {litres:G6} L"));
                return;
            }

            double celsius = state[_parts.Layout.Heat(tank.Index)] / litres;
            if (!(celsius > Frozen && celsius < Boiling))
            {
                FailAhead("balance of heat", place, FormattableString.Invariant($"the temperature is {celsius:G6} C"));
                return;
            }

            for (int content = 0; content < _parts.Contents.Count; content++)
            {
                double amount = state[_parts.Layout.Mixed(tank.Index) + content];
                if (!(amount >= -MayBeMissing(litres)))
                {
                    FailAhead($"balance of {_parts.Contents.Names[content]}", place, FormattableString.Invariant($"the content is {amount:G6}"));
                    return;
                }
            }
        }

        if (_table.FirstBeyond(state) is var beyond and >= 0)
        {
            StateNumber cannotBe = _table[beyond];
            FailAhead(cannotBe.Equation, cannotBe.Place, cannotBe.Beyond(state[beyond]));
        }
    }

    /// <summary>mol or g by which the errors of steps may bring a content below nothing. In little water that is more than an equilibrium takes for nothing.</summary>
    private static double MayBeMissing(double litres) => Math.Max(NegativeAmount, NegativeShare * litres);

    /// <summary>Ends the run for a reason; the first one stands.</summary>
    public void Fail(string equation, string place, string explanation) =>
        Failure ??= new PlantFailure(equation, place, Time, explanation);

    private void FailAhead(string equation, string place, string explanation) =>
        _ahead ??= new PlantFailure(equation, place, _integrator.End, explanation);

    private WaterTrace ConductivityTrace(TankBody tank)
    {
        WaterChemistry chemistry = new(_parts.Contents, _parts.Model.Precipitates);
        _looking.Add(chemistry);
        return new WaterTrace(time => Math.Log(Solved(tank, chemistry, time).Conductivity()), 0.0);
    }

    private WaterChemistry Solved(TankBody tank, WaterChemistry chemistry, double time)
    {
        double litres = _integrator.Interpolate(time, _parts.Layout.Volume(tank.Index));
        for (int substance = 0; substance < _dissolved.Length; substance++)
        {
            double amount = _integrator.Interpolate(time, _parts.Layout.Mixed(tank.Index) + substance);
            _dissolved[substance] = amount < 0.0 && amount >= -MayBeMissing(litres)
                ? Math.Max(amount / litres, EquilibriumSolver.MostNegativeTotal)
                : amount / litres;
        }

        double celsius = _integrator.Interpolate(time, _parts.Layout.Heat(tank.Index)) / litres;
        EquilibriumOutcome outcome = chemistry.Solve(_dissolved, celsius);
        if (!outcome.IsSolved)
        {
            PlantFailure failure = new("equilibrium of the water", tank.Description.Name, time, outcome.Describe());
            if (time > Time)
            {
                _ahead ??= failure;
            }
            else
            {
                Failure ??= failure;
            }
        }

        return chemistry;
    }
}
