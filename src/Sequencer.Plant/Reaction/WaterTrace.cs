namespace Sequencer.Plant.Reaction;

/// <summary>
/// pH of one tank over time, or the logarithm of its conductivity, as straight pieces, each checked in its middle against
/// the chemistry. Asked from scan to scan it solves an equilibrium only as often as that bends.
/// </summary>
internal sealed class WaterTrace
{
    /// <summary>pH, or share of the conductivity, by which the middle of a piece may be off; a third of the resolution of pH probes.</summary>
    private const double Tolerance = 0.003;

    private const double LongestPiece = 30.0;
    private const double ShortestPiece = 0.02;
    private const double FirstPiece = 1.0;

    private readonly Func<double, double> _solve;
    private double _start;
    private double _end;
    private double _atStart;
    private double _atEnd;
    private double _length = FirstPiece;

    /// <param name="solve">its value at a time within the last step of the equations</param>
    /// <param name="time">where the trace begins</param>
    public WaterTrace(Func<double, double> solve, double time)
    {
        _solve = solve;
        _start = time;
        _end = time;
        _atStart = solve(time);
        _atEnd = _atStart;
    }

    /// <summary>The value at a time not before the last one asked for and not beyond <paramref name="known"/>, where the equations end.</summary>
    public double Value(double time, double known)
    {
        while (_end < time)
        {
            Extend(known);
        }

        return At(time);
    }

    /// <summary>Forgets what is beyond a time: the plant goes on differently from there.</summary>
    public void Truncate(double time)
    {
        if (_end > time)
        {
            _atEnd = At(time);
            _end = time;
        }
    }

    private double At(double time) => _end > _start
        ? _atStart + ((_atEnd - _atStart) * ((time - _start) / (_end - _start)))
        : _atEnd;

    private void Extend(double known)
    {
        double from = _end;
        double atFrom = _atEnd;
        double to = Math.Min(known, from + Math.Min(_length, LongestPiece));
        double atTo = _solve(to);
        while (true)
        {
            double middle = 0.5 * (from + to);
            double atMiddle = _solve(middle);
            double error = Math.Abs(atMiddle - (0.5 * (atFrom + atTo)));
            if (!(error > Tolerance) || to - from <= ShortestPiece)
            {
                _length = error < 0.25 * Tolerance ? 2.0 * Math.Max(to - from, _length) : to - from;
                break;
            }

            to = middle;
            atTo = atMiddle;
        }

        _length = Math.Clamp(_length, ShortestPiece, LongestPiece);
        (_start, _atStart, _end, _atEnd) = (from, atFrom, to, atTo);
    }
}
