namespace Sequencer.Plant.Hydraulics;

/// <summary>
/// A value that moves evenly towards where it was last sent, with its past kept as long as dead
/// times need it. It never jumps: the equations stay continuous, so that their steps stay long.
/// </summary>
internal sealed class Ramp
{
    /// <summary>Seconds for what is at once for a plant: a contactor, air that reaches a suction.</summary>
    public const double AtOnce = 0.05;

    private readonly double _keptSeconds;
    private readonly List<Piece> _pieces = [];

    public Ramp(double value, double keptSeconds)
    {
        _keptSeconds = keptSeconds;
        _pieces.Add(new Piece(double.NegativeInfinity, 0.0, value, value, AtOnce));
    }

    public double Target => _pieces[^1].To;

    /// <summary>From then on it stands at its target.</summary>
    public double RestsFrom => _pieces[^1].End;

    /// <summary>Sends the value to <paramref name="target"/> from <paramref name="time"/> on, at the speed of one whole travel in that many seconds.</summary>
    public void MoveTo(double time, double target, double travelSeconds)
    {
        double from = Value(time);
        double duration = Math.Max(AtOnce, Math.Abs(target - from) * travelSeconds);
        while (_pieces.Count > 1 && _pieces[^1].Start >= time)
        {
            _pieces.RemoveAt(_pieces.Count - 1);
        }

        _pieces.Add(new Piece(time, time, from, target, duration));
        while (_pieces.Count > 2 && _pieces[1].Start < time - _keptSeconds && _pieces[2].Start < time - _keptSeconds)
        {
            _pieces.RemoveAt(0);
        }
    }

    public double Value(double time)
    {
        if (_pieces[^1].End <= time)
        {
            return _pieces[^1].To;
        }

        for (int index = _pieces.Count - 1; index > 0; index--)
        {
            if (_pieces[index].Start <= time)
            {
                return _pieces[index].Value(time);
            }
        }

        return _pieces[0].Value(time);
    }

    /// <summary>The first time after <paramref name="time"/> at which the value begins or ends to move; infinity where it is at rest.</summary>
    public double NextKink(double time)
    {
        double next = double.PositiveInfinity;
        for (int index = _pieces.Count - 1; index > 0 && _pieces[index].End > time; index--)
        {
            double kink = _pieces[index].Start > time ? _pieces[index].Start : _pieces[index].End;
            next = Math.Min(next, kink);
        }

        return next;
    }

    /// <summary>One movement; the first piece has always been at its end.</summary>
    private readonly record struct Piece(double Start, double Origin, double From, double To, double Duration)
    {
        public double End => Start + Duration;

        public double Value(double time) => From + ((To - From) * Math.Clamp((time - Origin) / Duration, 0.0, 1.0));
    }
}
