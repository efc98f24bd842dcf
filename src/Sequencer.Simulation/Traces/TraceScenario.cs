using System.Globalization;
using System.Text;
using Sequencer.Simulation.Metadata;

namespace Sequencer.Simulation.Traces;

/// <summary>A run as a scenario that the simulator plays without the plant; it is as expected while the requirement breaks as here.</summary>
public static class TraceScenario
{
    /// <summary>The longest that a scenario may last, in seconds.</summary>
    private const double Longest = 7 * 86_400;

    /// <summary>Null where the run is longer than a scenario may be, or only reaches something.</summary>
    public static string? Write(TraceStory story)
    {
        double seconds = story.Scans * story.ScanMilliseconds / 1000.0;
        if (story.End.IsReached || seconds > Longest)
        {
            return null;
        }

        StringBuilder text = new();
        text.Append("scenario: 1\n");
        text.Append(CultureInfo.InvariantCulture, $"name: {story.End.Name} is broken\n");
        text.Append(CultureInfo.InvariantCulture, $"purpose: \"The run that breaks {story.End.Name}. While the program has this fault it goes as expected; once it is mended it does not.\"\n");
        text.Append(CultureInfo.InvariantCulture, $"lasts: {Seconds(story, story.Scans + 1)}\n");
        text.Append("inputs:\n");
        foreach (IGrouping<long, string> moment in Changes(story).OrderBy(change => change.Scan).GroupBy(change => change.Scan, change => change.Words))
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {{at: {Seconds(story, moment.Key)}, {string.Join(", ", moment)}}}\n");
        }

        text.Append("expect:\n");
        text.Append(CultureInfo.InvariantCulture, $"  - {{requirement: {story.End.Name}, broken_at: {Seconds(story, story.Scans)}}}\n");
        return text.ToString();
    }

    private static IEnumerable<(long Scan, string Words)> Changes(TraceStory story)
    {
        bool any = false;
        foreach (TraceInput input in story.Inputs)
        {
            long before = input.Rest;
            foreach (ValueRun run in story.History.Input(input.Variable.Index).Runs)
            {
                if (run.Value != before)
                {
                    any = true;
                    yield return (run.From, $"{input.Name}: {Value(story.Site, input.Name, run.Value)}");
                }

                before = run.Value;
            }
        }

        if (!any)
        {
            // Without a line the plant would be asked: one input is given what it has at rest.
            yield return (1, $"{story.Inputs[0].Name}: {Value(story.Site, story.Inputs[0].Name, story.Inputs[0].Rest)}");
        }
    }

    private static string Value(SiteMetadata site, string input, long value)
    {
        SignalMetadata? signal = site.Signal(input);
        string number = (value * (signal?.Resolution ?? 1)).ToString("0.############################", CultureInfo.InvariantCulture);
        return signal is { Unit.Length: > 0 } ? $"{number} {signal.Unit}" : number;
    }

    private static string Seconds(TraceStory story, long scan) =>
        string.Create(CultureInfo.InvariantCulture, $"{(scan - 1) * story.ScanMilliseconds / 1000m:0.###} s");
}
