using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Lists;

/// <summary>
/// Every alarm that a site can raise, in the order of the programs. Priority, consequence, response and time are there where the author has
/// given them; the rest is for the rationalisation that IEC 62682 asks for, by the people who answer the alarms.
/// </summary>
public static class AlarmList
{
    private static readonly ImmutableArray<string> Columns =
        ["plant unit", "alarm", "message", "kind", "priority", "condition", "consequence", "response", "within", "source"];

    /// <param name="site">The programs.</param>
    /// <param name="system">Its alarms are listed.</param>
    /// <param name="root">What is left out at the beginning of the paths of the program's files.</param>
    public static ListTable Of(SiteProgram site, TransitionSystem system, string root)
    {
        Dictionary<string, OperatorAlarm> given = new(StringComparer.Ordinal);
        Dictionary<string, Trip> trips = new(StringComparer.Ordinal);
        foreach (UnitProgram unit in site.Units)
        {
            foreach (OperatorAlarm alarm in unit.Alarms)
            {
                given[site.NameOf(unit, alarm.Name)] = alarm;
            }

            foreach (Trip trip in unit.Trips)
            {
                trips[site.NameOf(unit, trip.Name)] = trip;
            }
        }

        return new ListTable("alarms", Columns, [.. system.Alarms.Select(alarm => Row(site, alarm, given.GetValueOrDefault(alarm.Name), trips.GetValueOrDefault(alarm.Name), root))]);
    }

    private static ImmutableArray<string> Row(SiteProgram site, Alarm alarm, OperatorAlarm? given, Trip? trip, string root) =>
    [
        Unit(site, alarm.Name),
        alarm.Name,
        given?.Message ?? alarm.Message,
        trip is not null ? $"trip, {trip.Reaction.ToString().ToLowerInvariant()}" : given is not null ? "alarm" : "program",
        given?.Response?.Priority.ToString().ToLowerInvariant() ?? "",
        (given?.Condition ?? trip?.Condition)?.Span.Text.ToString() ?? "",
        given?.Response?.Consequence ?? "",
        given?.Response?.Response ?? "",
        given?.Response?.Within.ToString() ?? "",
        ListTable.Place(alarm.Origin.Span, root),
    ];

    /// <summary>The unit whose name the alarm's begins with, or that has the device whose tag it begins with.</summary>
    private static string Unit(SiteProgram site, string alarm)
    {
        string first = alarm[..Math.Max(0, alarm.IndexOf('.', StringComparison.Ordinal))];
        UnitProgram? unit = site.Units.Length == 1 ? site.Units[0]
            : site.Units.FirstOrDefault(one => one.Name == first || one.Outputs.Any(output => output.Tag == first));
        return unit?.Name ?? "";
    }
}
