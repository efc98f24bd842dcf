using System.Collections.Immutable;

namespace Sequencer.Plant.Response;

/// <summary>How a reading answers to pulses of one reagent.</summary>
/// <param name="Shape">The dead time and lag that all pulses have in common.</param>
/// <param name="Parts">The same from the record without one of its parts, for each part.</param>
/// <param name="Before">What the reading was before the first pulse.</param>
/// <param name="Pulses">The pulses.</param>
/// <param name="Changes">By how much each moved the reading in the end.</param>
/// <param name="Noise">Root mean square of what is left between record and model: noise, and what the model does not know.</param>
/// <param name="Seen">The part of the record that was looked at.</param>
public sealed record PulseResponse(
    PulseShape Shape,
    ImmutableArray<PulseShape> Parts,
    double Before,
    ImmutableArray<Pulse> Pulses,
    ImmutableArray<Estimate> Changes,
    double Noise,
    Stretch Seen)
{
    private const double Shown = 0.95;

    public Estimate DeadTimeSeconds => Of(shape => shape.DeadTimeSeconds) with { IsFound = Shape.DeadTimeSeconds < PulseFit.LongestSearched };

    public Estimate LagSeconds => Of(shape => shape.LagSeconds) with { IsFound = Shape.LagSeconds is > PulseFit.ShortestLag and < PulseFit.LongestSearched };

    /// <summary>Seconds after the end of a pulse as long as the last at which 95 % of it shows. Its error is its own, since a dead time found too long goes with a lag found too short.</summary>
    public Estimate WaitSeconds => Of(shape => shape.SecondsToShow(Shown, Pulses[^1].Seconds));

    public bool IsDetermined => DeadTimeSeconds.IsDetermined && LagSeconds.IsDetermined && WaitSeconds.IsDetermined;

    /// <summary>What the model reads at a time.</summary>
    public double At(double seconds)
    {
        double value = Before;
        for (int pulse = 0; pulse < Pulses.Length && Pulses[pulse].Start < seconds; pulse++)
        {
            value += Changes[pulse].Value * Shape.Share(seconds - Pulses[pulse].Start, Pulses[pulse].Seconds);
        }

        return value;
    }

    /// <summary>The reading once so many pulses have shown.</summary>
    public double After(int pulses) => Before + Changes.Take(pulses).Sum(change => change.Value);

    private Estimate Of(Func<PulseShape, double> figure) => new(figure(Shape), PulseFit.Jackknife([.. Parts.Select(figure)]));
}
