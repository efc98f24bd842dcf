namespace Sequencer.Plant.Response;

/// <summary>A stretch of time, in seconds, in which a pump gave reagent.</summary>
public sealed record Pulse(double Start, double Seconds)
{
    public double End => Start + Seconds;
}
