using System.Collections.Immutable;

namespace Sequencer.Sites.Trials;

/// <summary>Runs of a set in which the same unit came to rest first, after the same alarm; counted from 0.</summary>
internal sealed record RestRuns(string What, string Alarm, ImmutableArray<int> Runs)
{
    /// <summary>The commonest first.</summary>
    public static IEnumerable<RestRuns> Of(TrialSet set) => Enumerable.Range(0, set.Runs.Length)
        .Where(run => set.Runs[run].Reaction is not null)
        .GroupBy(run => (What: set.Runs[run].Reaction?.Name ?? "", Alarm: set.Runs[run].FirstAlarm?.Name ?? "none"))
        .Select(group => new RestRuns(group.Key.What, group.Key.Alarm, [.. group]))
        .OrderByDescending(rest => rest.Runs.Length).ThenBy(rest => rest.Runs[0]);
}
