namespace Sequencer.Simulation.Pictures;

/// <summary>Maps values to pixels along one axis, and says where round values lie.</summary>
internal sealed record AxisScale(double From, double To, double FromPixel, double ToPixel, double TickStep)
{
    /// <summary>Round steps of a clock, in seconds: from a tenth to a day.</summary>
    private static ReadOnlySpan<double> ClockSteps =>
        [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400];

    public double Pixel(double value) => FromPixel + ((value - From) / (To - From) * (ToPixel - FromPixel));

    /// <summary>Round values from end to end.</summary>
    public IEnumerable<double> Ticks()
    {
        long first = (long)Math.Ceiling((From / TickStep) - Slack);
        long last = (long)Math.Floor((To / TickStep) + Slack);
        for (long index = first; index <= last; index++)
        {
            yield return index * TickStep;
        }
    }

    /// <summary>A time axis from 0 with at most <paramref name="mostTicks"/> ticks at round clock times.</summary>
    public static AxisScale Time(double seconds, double left, double right, int mostTicks)
    {
        double end = Math.Max(seconds, 1);
        double step = end;
        foreach (double candidate in ClockSteps)
        {
            if (end / candidate <= mostTicks)
            {
                step = candidate;
                break;
            }
        }

        return new AxisScale(0, end, left, right, step);
    }

    /// <summary>A value axis from end to end, ticked at round values 1, 2 or 5 times a power of ten apart.</summary>
    public static AxisScale Value(double lowest, double highest, double bottom, double top, int mostTicks, double finest)
    {
        double span = Math.Max(highest - lowest, finest * mostTicks);
        double rough = span / mostTicks;
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double step = power * (rough / power) switch
        {
            <= 1 + Slack => 1,
            <= 2 + Slack => 2,
            <= 5 + Slack => 5,
            _ => 10,
        };
        double to = Math.Max(highest, lowest + (step * 2));
        return new AxisScale(lowest, to, bottom, top, step);
    }

    private const double Slack = 1e-6;
}
