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

    private readonly PlantParts _parts;
    private StateTable _table;
    private SwitchingIntegrator _integrator;
    private TankLimits _limits;
    private KnifeTouch _knives;
    private PhysicalBounds _bounds;
    private long _stepsBefore;
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
        Present = new Instant(parts.InitialState());
        (_table, _integrator, _limits, _knives, _bounds) = Stepping();
        Waters = new TankWaters(parts, this);
        Waters.TakeSolubility();
    }

    public PlantEquations Equations { get; }

    public TankWaters Waters { get; }

    /// <summary>Now.</summary>
    public Instant Present { get; }

    public double Time => Present.Time;

    /// <summary>Where the last step begins.</summary>
    public double Start => _integrator.Start;

    /// <summary>How far the equations have been stepped.</summary>
    public double End => _integrator.End;

    /// <summary>The state at <see cref="End"/>.</summary>
    public ReadOnlySpan<double> StateAtEnd => _integrator.State;

    public PlantFailure? Failure { get; private set; }

    /// <summary>The state now, laid out as <see cref="PlantParts.Layout"/> says.</summary>
    public ReadOnlySpan<double> Now => Present.State;

    /// <summary>A step has been taken, from <see cref="Start"/> to <see cref="End"/>; the time now may be long before its end.</summary>
    public event Action? Stepped;

    /// <summary>The equations change now: what was found further on never comes.</summary>
    public event Action? Cut;

    public long Steps => _stepsBefore + _integrator.Accepted;

    /// <summary>One number of the state at a time within the last step.</summary>
    public double At(double time, int place) => _integrator.Interpolate(time, place);

    /// <summary>Brings a moment to a time within the last step.</summary>
    public void Look(double time, Instant moment)
    {
        moment.Time = time;
        if (moment.Step == _integrator.Version && moment.State.Length == _parts.Layout.Count)
        {
            _integrator.Reinterpolate(time, moment.State);
            return;
        }

        if (moment.State.Length != _parts.Layout.Count)
        {
            moment.State = new double[_parts.Layout.Count];
        }

        moment.Step = _integrator.Version;
        _integrator.Interpolate(time, moment.State);
    }

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
            double[] now = Present.State;
            Array.Resize(ref now, _parts.Layout.Count);
            (Present.State, Present.Step) = (now, -1);
            _stepsBefore = Steps;
            (_table, _integrator, _limits, _knives, _bounds) = Stepping();
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
            Cut?.Invoke();
        }

        while (_integrator.End < time && _ahead is null && Failure is null)
        {
            Waters.FollowToEnd();
            Waters.TakeLimeSaturation();
            if (Waters.TakeSolubility())
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
            Look(time, Present);
        }
    }

    /// <summary>From the state now on.</summary>
    private (StateTable Table, SwitchingIntegrator Integrator, TankLimits Limits, KnifeTouch Knives, PhysicalBounds Bounds) Stepping()
    {
        StateTable table = new(_parts);
        SwitchingIntegrator integrator = new(Equations.Rates, table.AllowedErrors(), RelativeTolerance, FirstStep, ShortStep);
        integrator.Restart(Time, Present.State);
        return (table, integrator, new TankLimits(_parts, integrator), new KnifeTouch(_parts, integrator), new PhysicalBounds(_parts, table));
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
        if (_bounds.FirstBeyond(_integrator.State, End) is { } cannotBe)
        {
            FailAt(cannotBe);
        }
        else
        {
            Stepped?.Invoke();
        }
    }

    /// <summary>False where none is short enough.</summary>
    private bool Step(double limit)
    {
        if (_integrator.Step(limit) != StepOutcome.TooSmall)
        {
            return true;
        }

        StateNumber hindered = _table[_integrator.Hindrance];
        FailAt(new PlantFailure(hindered.Equation, hindered.Place, End, "no step was small enough for the error allowed"));
        return false;
    }

    private void CutAt(double time)
    {
        _integrator.Truncate(time);
        Waters.Truncate(time);
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

    /// <summary>Ends the run for a reason; the first one stands.</summary>
    public void Fail(string equation, string place, string explanation) =>
        Failure ??= new PlantFailure(equation, place, Time, explanation);

    /// <summary>Something cannot be at a time: at once where that has come, else once it comes.</summary>
    public void FailAt(PlantFailure failure)
    {
        if (failure.TimeSeconds > Time)
        {
            _ahead ??= failure;
        }
        else
        {
            Failure ??= failure;
        }
    }
}
