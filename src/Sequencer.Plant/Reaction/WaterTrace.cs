namespace Sequencer.Plant.Reaction;

/// <summary>
/// pH of one tank over time, or the logarithm of its conductivity, as straight pieces. A piece that ends where the one before it leads to bends too little to
/// matter; any other is checked in its middle against the chemistry. Asked from scan to scan it solves an equilibrium only as often as that bends.
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

    /// <summary>Whether what the last piece follows goes on as it did.</summary>
    private bool _leads;

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

        _leads = false;
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
        double error = Math.Abs(atTo - Led(to));

        // With an even bend the middle is off by a fourth of that or less: h^2 / 8 where the end is off by h (h + h') / 2, h' the length of the piece before.
        if (!(error <= Tolerance))
        {
            (to, atTo, error) = Halve(from, atFrom, to, atTo);
        }

        _length = Math.Clamp(error < 0.25 * Tolerance ? 2.0 * Math.Max(to - from, _length) : to - from, ShortestPiece, LongestPiece);
        (_start, _atStart, _end, _atEnd) = (from, atFrom, to, atTo);
        _leads = true;
    }

    /// <summary>What the last piece would come to; not a number where it leads nowhere.</summary>
    private double Led(double time) => _leads && _end > _start ? _atEnd + ((_atEnd - _atStart) * ((time - _end) / (_end - _start))) : double.NaN;

    /// <summary>A piece so short that its middle is as near as it must be.</summary>
    private (double To, double AtTo, double Error) Halve(double from, double atFrom, double to, double atTo)
    {
        while (true)
        {
            double middle = 0.5 * (from + to);
            double atMiddle = _solve(middle);
            double error = Math.Abs(atMiddle - (0.5 * (atFrom + atTo)));
            if (!(error > Tolerance) || to - from <= ShortestPiece)
            {
                return (to, atTo, error);
            }

            to = middle;
            atTo = atMiddle;
        }
    }
}
