using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>How long a run is, for a person: scans where they are few, else hours, minutes and seconds.</summary>
internal static class RunLength
{
    private const long FewScans = 20;

    public static string Of(TransitionSystem system, Fails fails)
    {
        long scans = fails.Trace.Scans;
        return scans switch
        {
            1 => "1 scan",
            <= FewScans => string.Create(CultureInfo.InvariantCulture, $"{scans} scans"),
            _ => Time(scans * system.ScanMilliseconds),
        };
    }

    private static string Time(long milliseconds)
    {
        long seconds = milliseconds / 1000;
        return seconds switch
        {
            < 60 => string.Create(CultureInfo.InvariantCulture, $"{milliseconds / 1000.0:0.0} s"),
            < 3600 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60} min {seconds % 60} s"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600} h {seconds / 60 % 60} min"),
        };
    }
}
