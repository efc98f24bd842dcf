namespace Sequencer.Plant.Instruments;

/// <summary>
/// What comes out of a pipe is what went in a fixed way before: along time for a dead time, along
/// what has flowed for a sample loop. Between two entries the value is straight.
/// </summary>
internal sealed class TransportDelay
{
    private readonly double _length;
    private readonly Queue<(double Place, double Value)> _inside = new();
    private (double Place, double Value) _left;
    private double _lastPlace;

    /// <param name="length">of the pipe, in the units of place</param>
    /// <param name="initial">what fills the pipe at the start, at place 0</param>
    public TransportDelay(double length, double initial)
    {
        _length = length;
        _left = (double.NegativeInfinity, initial);
        _inside.Enqueue((0.0, initial));
    }

    /// <summary>Lets a value in at a place not before the last one and returns what leaves.</summary>
    public double Advance(double place, double value)
    {
        if (_length <= 0.0)
        {
            return value;
        }

        // Where nothing flows nothing enters.
        if (place > _lastPlace)
        {
            _inside.Enqueue((place, value));
            _lastPlace = place;
        }

        double leaving = place - _length;
        while (_inside.Count > 1 && _inside.Peek().Place <= leaving)
        {
            _left = _inside.Dequeue();
        }

        (double nextPlace, double nextValue) = _inside.Peek();
        if (nextPlace <= leaving || double.IsNegativeInfinity(_left.Place))
        {
            return double.IsNegativeInfinity(_left.Place) ? _left.Value : nextValue;
        }

        return _left.Value + ((nextValue - _left.Value) * ((leaving - _left.Place) / (nextPlace - _left.Place)));
    }
}
