namespace Sequencer.Plant.Integration;

/// <summary>
/// The implicit method of <see cref="DiagonallyImplicitTableau"/>, for equations in which something is far quicker than what is looked
/// at: its step is held by the error alone. Each stage is solved by Newton's iteration with one factored matrix for all five,
/// <code>(1 - h gamma J) d = r + h gamma f(y + z) - z,   h k = (z - r) / gamma</code>
/// J from differences. As the iteration ends with the equations themselves, sums that these keep are kept, whatever J is.
/// </summary>
internal sealed class DiagonallyImplicit : IIntegrator
{
    private const int MostIterations = 8;

    /// <summary>Share of the error allowed by which a stage may miss its equation.</summary>
    private const double IterationShare = 0.003;

    /// <summary>An iteration that comes nearer by less than this factor each time asks for new derivatives.</summary>
    private const double QuickIteration = 0.05;

    /// <summary>A step that could grow by less than this stays, and its matrix with it.</summary>
    private const double WorthGrowing = 1.2;

    private readonly Rates _rates;
    private readonly double[] _absoluteTolerance;
    private readonly double _relativeTolerance;
    private readonly Jacobian _jacobian;
    private readonly TriangularFactors _factors;
    private readonly double[][] _increments = new double[DiagonallyImplicitTableau.Stages][];
    private readonly double[][] _dense = new double[4][];
    private readonly double[] _allowed;
    private readonly double[] _known;
    private readonly double[] _move;
    private readonly double[] _change;
    private readonly double[] _trial;
    private double[] _start;
    private double[] _end;
    private double _next;
    private double _length;
    private double _factoredStep = double.NaN;
    private bool _hasJacobian;
    private bool _isFresh;
    private double _slowest;

    /// <param name="rates">the right-hand side</param>
    /// <param name="absoluteTolerance">error allowed per step and component; infinity leaves a component out of step control</param>
    /// <param name="relativeTolerance">error allowed as a fraction of the component's size</param>
    /// <param name="firstStep">the first step tried, s</param>
    public DiagonallyImplicit(Rates rates, double[] absoluteTolerance, double relativeTolerance, double firstStep)
    {
        int count = absoluteTolerance.Length;
        _rates = rates;
        _absoluteTolerance = absoluteTolerance;
        _relativeTolerance = relativeTolerance;
        _next = firstStep;
        _jacobian = new Jacobian(rates, [.. absoluteTolerance.Select(allowed => double.IsFinite(allowed) ? allowed / relativeTolerance : 1.0)]);
        _factors = new TriangularFactors(count);
        for (int stage = 0; stage < _increments.Length; stage++)
        {
            _increments[stage] = new double[count];
        }

        for (int power = 0; power < _dense.Length; power++)
        {
            _dense[power] = new double[count];
        }

        (_allowed, _known, _move, _change, _trial) = (new double[count], new double[count], new double[count], new double[count], new double[count]);
        (_start, _end) = (new double[count], new double[count]);
    }

    public double Start { get; private set; }

    public double End { get; private set; }

    public ReadOnlySpan<double> State => _end;

    public long Accepted { get; private set; }

    public long Version { get; private set; }

    public void Restart(double time, ReadOnlySpan<double> state)
    {
        state.CopyTo(_end);
        Start = time;
        End = time;
        _length = 0.0;
        Version++;
        _hasJacobian = false;
    }

    /// <summary>As <see cref="Restart(double, ReadOnlySpan{double})"/>, with the step to try first, s.</summary>
    public void Restart(double time, ReadOnlySpan<double> state, double firstStep)
    {
        Restart(time, state);
        _next = firstStep;
    }

    public void Truncate(double time)
    {
        if (time < End)
        {
            Interpolate(time, _end);
            End = time;
        }

        _hasJacobian = false;
    }

    public StepOutcome Step(double limit)
    {
        (_start, _end) = (_end, _start);
        Start = End;
        for (int component = 0; component < _allowed.Length; component++)
        {
            _allowed[component] = _absoluteTolerance[component] + (_relativeTolerance * Math.Abs(_start[component]));
        }

        double step = _next;
        for (int attempt = 0; attempt < StepControl.MostAttempts && step >= StepControl.SmallestStep; attempt++)
        {
            bool reaches = StepControl.Reaches(Start, step, limit);
            double taken = reaches ? limit - Start : step;
            if (!Prepare(taken) || !SolveStages(taken))
            {
                // Derivatives of an earlier state may be why: the same step again with those of this one.
                step = _isFresh ? taken * 0.5 : taken;
                _hasJacobian = _isFresh;
                continue;
            }

            double error = Error();
            double factor = StepControl.Factor(error, order: 4);
            if (error <= 1.0)
            {
                Accept(taken, reaches ? limit : Start + taken);
                double wanted = factor is >= 1.0 and < WorthGrowing ? taken : taken * factor;
                _next = reaches ? Math.Max(step, wanted) : wanted;
                return StepOutcome.Accepted;
            }

            step = StepControl.Shorter(taken, factor);
        }

        StandAtStart();
        return StepOutcome.TooSmall;
    }

    public void TakeBack()
    {
        StandAtStart();
        Accepted--;
    }

    public void Interpolate(double time, Span<double> state)
    {
        for (int component = 0; component < state.Length; component++)
        {
            state[component] = Interpolate(time, component);
        }
    }

    public void Reinterpolate(double time, Span<double> state) => Interpolate(time, state);

    public double Interpolate(double time, int component)
    {
        if (_length == 0.0)
        {
            return _end[component];
        }

        double share = (time - Start) / _length;
        double rise = _dense[0][component] + (share * (_dense[1][component] + (share * (_dense[2][component] + (share * _dense[3][component])))));
        return _start[component] + (share * rise);
    }

    private void StandAtStart()
    {
        _start.CopyTo(_end, 0);
        End = Start;
        _length = 0.0;
        Version++;
    }

    private void Accept(double taken, double end)
    {
        End = end;
        _length = taken;
        Version++;
        _isFresh = false;
        _hasJacobian &= _slowest <= QuickIteration;
        Accepted++;
        for (int power = 0; power < _dense.Length; power++)
        {
            double[] sum = _dense[power];
            Array.Clear(sum);
            for (int stage = 0; stage < _increments.Length; stage++)
            {
                Add(sum, DiagonallyImplicitTableau.DenseWeights(stage)[power], _increments[stage]);
            }
        }
    }

    /// <summary>The derivatives where they are wanting, and the matrix of a step; false where it has no inverse.</summary>
    private bool Prepare(double step)
    {
        if (!_hasJacobian)
        {
            _jacobian.Find(Start, _start);
            (_hasJacobian, _isFresh, _factoredStep) = (true, true, double.NaN);
        }

        if (_factoredStep == step)
        {
            return true;
        }

        double scaled = step * DiagonallyImplicitTableau.Diagonal;
        for (int row = 0; row < _start.Length; row++)
        {
            double[] entries = _factors.Row(row);
            for (int column = 0; column < entries.Length; column++)
            {
                entries[column] = -scaled * _jacobian[row, column];
            }

            entries[row] += 1.0;
        }

        bool isRegular = _factors.Factor();
        _factoredStep = isRegular ? step : double.NaN;
        return isRegular;
    }

    /// <summary>All stages of a step; the state at its end. False where an iteration does not get there.</summary>
    private bool SolveStages(double step)
    {
        _slowest = 0.0;
        for (int stage = 0; stage < _increments.Length; stage++)
        {
            Array.Clear(_known);
            ReadOnlySpan<double> weights = DiagonallyImplicitTableau.Stage(stage);
            for (int earlier = 0; earlier < stage; earlier++)
            {
                Add(_known, weights[earlier], _increments[earlier]);
            }

            // The stage before is a guess at this one.
            _known.CopyTo(_move, 0);
            if (stage > 0)
            {
                Add(_move, DiagonallyImplicitTableau.Diagonal, _increments[stage - 1]);
            }

            if (!SolveStage(step, Start + (DiagonallyImplicitTableau.Nodes[stage] * step)))
            {
                return false;
            }

            double[] increment = _increments[stage];
            for (int component = 0; component < increment.Length; component++)
            {
                increment[component] = (_move[component] - _known[component]) / DiagonallyImplicitTableau.Diagonal;
            }
        }

        for (int component = 0; component < _end.Length; component++)
        {
            _end[component] = _start[component] + _move[component];
        }

        return true;
    }

    private bool SolveStage(double step, double time)
    {
        double scaled = step * DiagonallyImplicitTableau.Diagonal;
        double before = 0.0;
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            for (int component = 0; component < _trial.Length; component++)
            {
                _trial[component] = _start[component] + _move[component];
            }

            _rates(time, _trial, _change);
            for (int component = 0; component < _change.Length; component++)
            {
                _change[component] = _known[component] + (scaled * _change[component]) - _move[component];
            }

            _factors.Solve(_change);
            Add(_move, 1.0, _change);
            double size = Size(_change);
            if (iteration > 0)
            {
                double nearer = before == 0.0 ? 0.0 : size / before;
                if (!(nearer < 1.0))
                {
                    return size == 0.0;
                }

                _slowest = Math.Max(_slowest, nearer);
                if (nearer / (1.0 - nearer) * size <= IterationShare)
                {
                    return true;
                }
            }

            if (!double.IsFinite(size))
            {
                return false;
            }

            before = size;
        }

        return false;
    }

    /// <summary>The error over the error allowed, root mean square; what is quick is damped as the equations damp it.</summary>
    private double Error()
    {
        Array.Clear(_change);
        for (int stage = 0; stage < _increments.Length; stage++)
        {
            Add(_change, DiagonallyImplicitTableau.ErrorWeights[stage], _increments[stage]);
        }

        _factors.Solve(_change);
        return Math.Max(Size(_change), 1e-10);
    }

    private double Size(double[] vector)
    {
        double sum = 0.0;
        for (int component = 0; component < vector.Length; component++)
        {
            double ratio = vector[component] / _allowed[component];
            sum += ratio * ratio;
        }

        return Math.Sqrt(sum / vector.Length);
    }

    private static void Add(double[] sum, double factor, double[] vector)
    {
        for (int component = 0; component < sum.Length; component++)
        {
            sum[component] += factor * vector[component];
        }
    }
}
