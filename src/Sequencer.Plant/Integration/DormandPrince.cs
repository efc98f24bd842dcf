using System.Numerics;

namespace Sequencer.Plant.Integration;

/// <summary>
/// The embedded Runge-Kutta method of order 5(4) by Dormand and Prince (J. Comput. Appl. Math. 6
/// (1980) 19) with step control and the continuous extension of order 4 from Hairer, Norsett and
/// Wanner, Solving Ordinary Differential Equations I, section II.6. The stage weights and the
/// extension are linear in the stages, so sums that the equations keep are kept by every value that
/// comes out, but for rounding. Explicit: a time constant far below the step wanted holds the step down, which it tells.
/// </summary>
internal sealed class DormandPrince : IIntegrator
{
    /// <summary>Step times the quickest rate at the edge of stability, on the negative axis (Hairer and Wanner II, section IV.2).</summary>
    private const double EdgeOfStability = 3.25;

    private const int StepsToTell = 15;
    private const int StepsToTellOtherwise = 6;

    private readonly Rates _rates;
    private readonly double[] _absoluteTolerance;
    private readonly double _relativeTolerance;
    private readonly double[][] _stages = new double[7][];
    private readonly ContinuousExtension _between;
    private readonly double[] _trial;
    private readonly double[] _trialSum;
    private double[] _start;
    private double[] _end;
    private double _next;
    private double _length;
    private bool _hasLastStage;
    private int _atEdge;
    private int _offEdge;

    /// <param name="rates">the right-hand side</param>
    /// <param name="absoluteTolerance">error allowed per step and component; infinity leaves a component out of step control</param>
    /// <param name="relativeTolerance">error allowed as a fraction of the component's size</param>
    /// <param name="firstStep">the first step tried, s</param>
    public DormandPrince(Rates rates, double[] absoluteTolerance, double relativeTolerance, double firstStep)
    {
        _rates = rates;
        _absoluteTolerance = absoluteTolerance;
        _relativeTolerance = relativeTolerance;
        _next = firstStep;
        for (int index = 0; index < _stages.Length; index++)
        {
            _stages[index] = new double[absoluteTolerance.Length];
        }

        _between = new ContinuousExtension(absoluteTolerance.Length);
        _trial = new double[absoluteTolerance.Length];
        _trialSum = new double[absoluteTolerance.Length];
        _start = new double[absoluteTolerance.Length];
        _end = new double[absoluteTolerance.Length];
    }

    public double Start { get; private set; }

    public double End { get; private set; }

    public ReadOnlySpan<double> State => _end;

    public long Accepted { get; private set; }

    public long Version { get; private set; }

    /// <summary>The component whose error was furthest beyond what is allowed, or no number, when a step was too small.</summary>
    public int Hindrance { get; private set; }

    /// <summary>s; what is tried next where no limit is nearer. The last step may have been cut to any length.</summary>
    public double NextStep => _next;

    /// <summary>Many steps in a row were as long as stability lets them be.</summary>
    public bool IsHeldByStability => _atEdge >= StepsToTell;

    public void Restart(double time, ReadOnlySpan<double> state)
    {
        state.CopyTo(_end);
        Start = time;
        End = time;
        _length = 0.0;
        Version++;
        _hasLastStage = false;
        (_atEdge, _offEdge) = (0, 0);
    }

    public void Truncate(double time)
    {
        if (time < End)
        {
            Interpolate(time, _end);
            End = time;
        }

        _hasLastStage = false;
    }

    public StepOutcome Step(double limit)
    {
        (_start, _end) = (_end, _start);
        Start = End;
        FirstStage();
        double step = _next;
        for (int attempt = 0; attempt < StepControl.MostAttempts && step >= StepControl.SmallestStep; attempt++)
        {
            bool reaches = StepControl.Reaches(Start, step, limit);
            double taken = reaches ? limit - Start : step;
            double error = Attempt(taken);
            double factor = StepControl.Factor(error, order: 5);
            if (error <= 1.0)
            {
                End = reaches ? limit : Start + taken;
                // A step cut short by the limit says little about what would be possible.
                _next = reaches ? Math.Max(step, taken * factor) : taken * factor;
                _length = taken;
                Version++;
                WeightedSum(DormandPrinceTableau.DenseWeights, _trialSum);
                _between.Prepare(taken, _start, _end, _stages[0], _stages[6], _trialSum);
                WatchStability(taken);
                _hasLastStage = true;
                Accepted++;
                return StepOutcome.Accepted;
            }

            step = StepControl.Shorter(taken, factor);
        }

        Hindrance = StepControl.Furthest(_trialSum, _absoluteTolerance, _relativeTolerance, _start, _end);

        StandAtStart();
        return StepOutcome.TooSmall;
    }

    public void TakeBack()
    {
        StandAtStart();
        _hasLastStage = false;
        Accepted--;
    }

    public void Interpolate(double time, Span<double> state)
    {
        if (_length == 0.0)
        {
            _end.CopyTo(state);
            return;
        }

        _between.At((time - Start) / _length, state);
    }

    public void Reinterpolate(double time, Span<double> state)
    {
        if (_length != 0.0)
        {
            _between.Move((time - Start) / _length, state);
        }
    }

    public double Interpolate(double time, int component) => _length == 0.0 ? _end[component] : _between.At((time - Start) / _length, component);

    private void StandAtStart()
    {
        _start.CopyTo(_end, 0);
        End = Start;
        _length = 0.0;
        Version++;
    }

    private void FirstStage()
    {
        if (_hasLastStage)
        {
            (_stages[0], _stages[6]) = (_stages[6], _stages[0]);
        }
        else
        {
            _rates(Start, _start, _stages[0]);
        }
    }

    /// <summary>All stages of a step; returns the error over the error allowed, root mean square.</summary>
    private double Attempt(double step)
    {
        for (int stage = 1; stage < 7; stage++)
        {
            double[] target = stage == 6 ? _end : _trial;
            ReadOnlySpan<double> weights = DormandPrinceTableau.Stage(stage);
            WeightedSum(weights, _trialSum);
            int lane = 0;
            for (; lane <= target.Length - Vector<double>.Count; lane += Vector<double>.Count)
            {
                (Of(_start, lane) + (step * Of(_trialSum, lane))).CopyTo(target, lane);
            }

            for (; lane < target.Length; lane++)
            {
                target[lane] = _start[lane] + (step * _trialSum[lane]);
            }

            _rates(Start + (DormandPrinceTableau.Nodes[stage] * step), target, _stages[stage]);
        }

        return Error(step);
    }

    private double Error(double step)
    {
        double sum = 0.0;
        WeightedSum(DormandPrinceTableau.ErrorWeights, _trialSum);
        for (int index = 0; index < _end.Length; index++)
        {
            double error = _trialSum[index];
            double size = Math.Max(Math.Abs(_start[index]), Math.Abs(_end[index]));
            double allowed = _absoluteTolerance[index] + (_relativeTolerance * size);
            double ratio = step * error / allowed;
            sum += ratio * ratio;
        }

        return Math.Max(Math.Sqrt(sum / _end.Length), 1e-10);
    }

    /// <summary>The first stages by their weights. The lanes of a vector do what one number after the other would, to the last bit.</summary>
    private void WeightedSum(ReadOnlySpan<double> weights, double[] sums)
    {
        int lane = 0;
        for (; lane <= sums.Length - Vector<double>.Count; lane += Vector<double>.Count)
        {
            Vector<double> sum = Vector<double>.Zero;
            for (int stage = 0; stage < weights.Length; stage++)
            {
                sum += weights[stage] * Of(_stages[stage], lane);
            }

            sum.CopyTo(sums, lane);
        }

        for (; lane < sums.Length; lane++)
        {
            double sum = 0.0;
            for (int stage = 0; stage < weights.Length; stage++)
            {
                sum += weights[stage] * _stages[stage][lane];
            }

            sums[lane] = sum;
        }
    }

    private static Vector<double> Of(double[] values, int lane) => new(values, lane);

    /// <summary>The quickest rate as the last two stages tell it: both are at the step's end, a little apart (Hairer and Wanner II, section IV.2).</summary>
    private void WatchStability(double step)
    {
        double rates = 0.0;
        double states = 0.0;
        for (int index = 0; index < _end.Length; index++)
        {
            double allowed = _absoluteTolerance[index] + (_relativeTolerance * Math.Abs(_end[index]));
            double rate = (_stages[6][index] - _stages[5][index]) / allowed;
            double state = (_end[index] - _trial[index]) / allowed;
            rates += rate * rate;
            states += state * state;
        }

        if (states > 0.0 && step * Math.Sqrt(rates / states) > EdgeOfStability)
        {
            (_atEdge, _offEdge) = (_atEdge + 1, 0);
        }
        else if (_atEdge > 0 && ++_offEdge == StepsToTellOtherwise)
        {
            (_atEdge, _offEdge) = (0, 0);
        }
    }
}
