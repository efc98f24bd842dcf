using System.Collections.Immutable;

namespace Sequencer.Plant.Response;

/// <summary>How a reading answers to pulses of one reagent.</summary>
/// <param name="Shape">The dead time and lag that all pulses have in common.</param>
/// <param name="DeadTimeError">Standard error of the dead time, s, by leaving out parts of the record.</param>
/// <param name="LagError">The same of the lag, s.</param>
/// <param name="Before">What the reading was before the first pulse.</param>
/// <param name="Pulses">The pulses.</param>
/// <param name="Changes">By how much each moved the reading in the end.</param>
/// <param name="Noise">Root mean square of what is left between record and model.</param>
public sealed record PulseResponse(
    PulseShape Shape, double DeadTimeError, double LagError, double Before, ImmutableArray<Pulse> Pulses, ImmutableArray<double> Changes, double Noise)
{
    private const double Shown = 0.95;

    /// <summary>Seconds after the end of a pulse as long as the last at which 95 % of it shows, with dead time and lag so many standard errors above what was found.</summary>
    public double WaitSeconds(double errors) => new PulseShape(
        Shape.DeadTimeSeconds + (errors * DeadTimeError), Shape.LagSeconds + (errors * LagError)).SecondsToShow(Shown, Pulses[^1].Seconds);

    /// <summary>What the model reads at a time.</summary>
    public double At(double seconds)
    {
        double value = Before;
        for (int pulse = 0; pulse < Pulses.Length && Pulses[pulse].Start < seconds; pulse++)
        {
            value += Changes[pulse] * Shape.Share(seconds - Pulses[pulse].Start, Pulses[pulse].Seconds);
        }

        return value;
    }

    /// <summary>The reading once so many pulses have shown.</summary>
    public double After(int pulses) => Before + Changes.Take(pulses).Sum();
}
