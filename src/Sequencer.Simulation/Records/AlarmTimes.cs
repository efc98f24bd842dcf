using System.Collections.Immutable;

namespace Sequencer.Simulation.Records;

/// <summary>An alarm's times, from raised to cleared; an alarm that still stands ends with the record.</summary>
public sealed record AlarmTimes(string Name, string Words, ImmutableArray<ScanInterval> Times)
{
    /// <summary>Every alarm that was raised, in the order of their first times.</summary>
    public static ImmutableArray<AlarmTimes> Of(RunRecord record)
    {
        List<string> order = [];
        Dictionary<string, (string Words, List<ScanInterval> Times, long? Since)> alarms = new(StringComparer.Ordinal);
        foreach (RunEvent happening in record.Events)
        {
            if (happening.Kind == RunEventKind.AlarmRaised)
            {
                if (!alarms.TryGetValue(happening.Subject, out var known))
                {
                    known = (happening.Words, [], null);
                    order.Add(happening.Subject);
                }

                alarms[happening.Subject] = known with { Since = happening.Scan };
            }
            else if (happening.Kind == RunEventKind.AlarmCleared && alarms.TryGetValue(happening.Subject, out var raised) && raised.Since is long since)
            {
                raised.Times.Add(new ScanInterval(since, happening.Scan));
                alarms[happening.Subject] = raised with { Since = null };
            }
        }

        return [.. order.Select(name => Finish(name, alarms[name], record.Scans))];
    }

    private static AlarmTimes Finish(string name, (string Words, List<ScanInterval> Times, long? Since) alarm, long end)
    {
        if (alarm.Since is long since)
        {
            alarm.Times.Add(new ScanInterval(since, end));
        }

        return new AlarmTimes(name, alarm.Words, [.. alarm.Times]);
    }
}
