using System.Globalization;

namespace Sequencer.Simulation.Words;

/// <summary>Durations as people in a control room say them.</summary>
public static class DurationWords
{
    /// <summary>Hours, minutes and seconds; tenths only below a minute: <c>2 h 05 min</c>, <c>4 min 30 s</c>, <c>12.4 s</c>.</summary>
    public static string Of(double seconds)
    {
        CultureInfo invariant = CultureInfo.InvariantCulture;
        if (seconds < 60 - 0.05)
        {
            return string.Create(invariant, $"{seconds:0.#} s");
        }

        long whole = (long)Math.Round(seconds, MidpointRounding.AwayFromZero);
        long hours = whole / 3600;
        long minutes = whole / 60 % 60;
        long rest = whole % 60;
        return (hours, rest) switch
        {
            (0, 0) => string.Create(invariant, $"{minutes} min"),
            (0, _) => string.Create(invariant, $"{minutes} min {rest:00} s"),
            (_, 0) => string.Create(invariant, $"{hours} h {minutes:00} min"),
            _ => string.Create(invariant, $"{hours} h {minutes:00} min {rest:00} s"),
        };
    }

    /// <summary>A time since the start of the run as a clock shows it: <c>h:mm:ss</c>, with tenths where they matter.</summary>
    public static string Clock(double seconds)
    {
        long tenths = (long)Math.Round(seconds * 10, MidpointRounding.AwayFromZero);
        long whole = tenths / 10;
        string clock = string.Create(CultureInfo.InvariantCulture, $"{whole / 3600}:{whole / 60 % 60:00}:{whole % 60:00}");
        return tenths % 10 == 0 ? clock : string.Create(CultureInfo.InvariantCulture, $"{clock}.{tenths % 10}");
    }
}
