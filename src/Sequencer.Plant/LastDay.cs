namespace Sequencer.Plant;

/// <summary>How much a running total has grown in the last 24 h. It is remembered by the minute: the figure is never too small, and too large by a minute's growth at most.</summary>
internal sealed class LastDay
{
    private const int Minutes = 24 * 60;
    private const double SecondsPerMinute = 60.0;

    private readonly double[] _atMinute = new double[Minutes + 1];
    private long _minute;
    private double _last;

    /// <summary>Growth up to now; times that pass without a call count as times in which it did not grow.</summary>
    public double Observe(double seconds, double total)
    {
        long minute = (long)(seconds / SecondsPerMinute);
        if (minute - _minute > Minutes)
        {
            Array.Fill(_atMinute, _last);
            _minute = minute;
        }

        while (_minute < minute)
        {
            _minute++;
            _atMinute[_minute % _atMinute.Length] = _last;
        }

        _last = total;
        return total - _atMinute[(_minute + 1) % _atMinute.Length];
    }
}
