namespace Sequencer.Plant.Integration;

/// <summary>
/// The explicit method wherever it is quick enough, the implicit one where stability alone holds the explicit one's step down. A step
/// of the implicit method costs about as many rates as there are components: that pays only where the explicit step is far too short.
/// Where the equations change the explicit method is tried again.
/// </summary>
internal sealed class SwitchingIntegrator : IIntegrator
{
    private readonly DormandPrince _explicit;
    private readonly DiagonallyImplicit _implicit;
    private readonly double _shortStep;
    private bool _isImplicit;
    private bool _equationsChanged;

    /// <param name="rates">the right-hand side</param>
    /// <param name="absoluteTolerance">error allowed per step and component; infinity leaves a component out of step control</param>
    /// <param name="relativeTolerance">error allowed as a fraction of the component's size</param>
    /// <param name="firstStep">the first step tried, s</param>
    /// <param name="shortStep">s; an explicit step that stability holds below this is too short</param>
    public SwitchingIntegrator(Rates rates, double[] absoluteTolerance, double relativeTolerance, double firstStep, double shortStep)
    {
        _explicit = new DormandPrince(rates, absoluteTolerance, relativeTolerance, firstStep);
        _implicit = new DiagonallyImplicit(rates, absoluteTolerance, relativeTolerance, firstStep);
        _shortStep = shortStep;
    }

    public double Start => Present.Start;

    public double End => Present.End;

    public ReadOnlySpan<double> State => Present.State;

    public long Accepted => _explicit.Accepted + _implicit.Accepted;

    public long Version => _explicit.Version + _implicit.Version;

    /// <summary>Steps of the implicit method among those accepted.</summary>
    public long AcceptedImplicit => _implicit.Accepted;

    /// <summary>Of the last explicit step that was too small.</summary>
    public int Hindrance => _explicit.Hindrance;

    private IIntegrator Present => _isImplicit ? _implicit : _explicit;

    public void Restart(double time, ReadOnlySpan<double> state)
    {
        _explicit.Restart(time, state);
        _isImplicit = false;
    }

    public void Truncate(double time)
    {
        Present.Truncate(time);
        _equationsChanged = true;
    }

    public StepOutcome Step(double limit)
    {
        if (_isImplicit && _equationsChanged)
        {
            Restart(_implicit.End, _implicit.State);
        }
        else if (!_isImplicit && _explicit.IsHeldByStability && _explicit.NextStep < _shortStep)
        {
            BeginImplicit(_explicit.NextStep);
        }

        _equationsChanged = false;
        StepOutcome outcome = Present.Step(limit);
        if (outcome == StepOutcome.TooSmall && _isImplicit)
        {
            Restart(_implicit.End, _implicit.State);
            return _explicit.Step(limit);
        }

        if (outcome == StepOutcome.TooSmall)
        {
            BeginImplicit(StepControl.SmallestStep * 1e3);
            outcome = _implicit.Step(limit);
        }

        return outcome;
    }

    public void TakeBack() => Present.TakeBack();

    public void Interpolate(double time, Span<double> state) => Present.Interpolate(time, state);

    public void Reinterpolate(double time, Span<double> state) => Present.Reinterpolate(time, state);

    public double Interpolate(double time, int component) => Present.Interpolate(time, component);

    private void BeginImplicit(double firstStep)
    {
        _implicit.Restart(_explicit.End, _explicit.State, firstStep);
        _isImplicit = true;
    }
}
