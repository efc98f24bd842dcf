namespace Sequencer.Plant.Response;

/// <summary>
/// How much of a pulse's change shows so many seconds after its begin, behind a dead time and a first-order lag. What is dosed evenly for p seconds gives, u seconds
/// after the dead time,
/// <code>
/// u &lt; p:  (u - tau (1 - exp(-u / tau))) / p,   then  1 - (tau / p) (exp(p / tau) - 1) exp(-u / tau)
/// </code>
/// which is the step response of such a lag (any textbook of control) integrated over the pulse.
/// </summary>
public sealed record PulseShape(double DeadTimeSeconds, double LagSeconds)
{
    private const double ShortestLag = 1e-3;

    /// <summary>Lags after the pulse from which on all of it shows, but for 1e-11.</summary>
    private const double AllShown = 25.0;

    public double Share(double seconds, double pulseSeconds)
    {
        double u = seconds - DeadTimeSeconds;
        if (u <= 0.0)
        {
            return 0.0;
        }

        double lag = Math.Max(LagSeconds, ShortestLag);
        double pulse = Math.Max(pulseSeconds, ShortestLag);
        if (u - pulse > AllShown * lag)
        {
            return 1.0;
        }

        return u < pulse
            ? (u + (lag * (Math.Exp(-u / lag) - 1.0))) / pulse
            : 1.0 - (lag / pulse * (Math.Exp((pulse - u) / lag) - Math.Exp(-u / lag)));
    }

    /// <summary>Seconds after the end of a pulse at which a share of its change shows.</summary>
    public double SecondsToShow(double share, double pulseSeconds)
    {
        double low = 0.0;
        double high = DeadTimeSeconds + pulseSeconds + (30.0 * Math.Max(LagSeconds, ShortestLag));
        for (int halving = 0; halving < 60; halving++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Share(pulseSeconds + middle, pulseSeconds) < share ? (middle, high) : (low, middle);
        }

        return high;
    }
}
