using Sequencer.Language.Programs;
using Sequencer.Plant.Response;

namespace Sequencer.Sites.Tuning;

/// <summary>A dose of a program and how its reading answered in a recorded trend.</summary>
internal sealed record DoseTrend(UnitProgram Unit, Step Step, DoseAction Dose, PulseResponse Response)
{
    /// <summary>What is known of a dose from a trend that has its pump and its reading; null where it has too few pulses.</summary>
    public static DoseTrend? Of(UnitProgram unit, Step step, DoseAction dose, TrendTable trend)
    {
        if (trend.Find(dose.Output.Tag) is not { } pump || trend.Find(dose.Signal.Tag) is not { } reading)
        {
            return null;
        }

        Pulse[] others =
        [
            .. unit.Steps.SelectMany(other => other.Actions.OfType<DoseAction>())
                .Where(other => other.Signal.Tag == dose.Signal.Tag && other.Output.Tag != dose.Output.Tag)
                .Select(other => trend.Find(other.Output.Tag)).OfType<TrendColumn>().Distinct().SelectMany(trend.Pulses),
        ];
        return PulseFit.Of(trend.Seconds, reading.Values, trend.Pulses(pump), others) is { } response ? new DoseTrend(unit, step, dose, response) : null;
    }

    /// <summary>The length of the pulses that came last, which were the nearest to the target, s.</summary>
    public double LastPulseSeconds => Response.Pulses[^1].Seconds;

    /// <summary>The most that a second of the last pulses moved the reading.</summary>
    public double SteepestPerSecond(int pulses) => Enumerable.Range(Math.Max(0, Response.Pulses.Length - pulses), Math.Min(pulses, Response.Pulses.Length))
        .Max(index => Math.Abs(Response.Changes[index]) / Response.Pulses[index].Seconds);

    /// <summary>The least that so many pulses in a row moved the reading.</summary>
    public double LeastOf(int pulses) => Enumerable.Range(0, Math.Max(1, Response.Changes.Length - pulses + 1))
        .Min(first => Math.Abs(Response.Changes.Skip(first).Take(pulses).Sum()));
}
