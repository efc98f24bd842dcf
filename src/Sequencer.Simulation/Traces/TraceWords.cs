using System.Globalization;
using System.Text;

namespace Sequencer.Simulation.Traces;

/// <summary>A run in words.</summary>
public static class TraceWords
{
    private const int TimeWidth = 28;

    /// <summary>Lines, each ended by LF.</summary>
    public static string Write(TraceStory story)
    {
        StringBuilder text = new();
        Line(text, $"{story.End.Name} \"{story.End.Title}\" is {story.End.Word} {TraceTimes.Of(story.Scans, story.ScanMilliseconds)} after power-up, in scan {story.Scans}.");
        Line(text, $"  {story.End.Statement}");
        Line(text, story.IsShortest ? "No shorter run does it." : "There may be a shorter run.");
        if (!story.IsTidied)
        {
            Line(text, "The time was over before the run was tidied: some of what is told may not matter for the end.");
        }

        Line(text, "At rest is what is not named: switches not so, channels good, readings in the middle of their range, settings at their defaults.");
        text.Append('\n');
        foreach (TraceMoment moment in story.Moments)
        {
            if (moment.Waited is { } waited)
            {
                Line(text, $"  ... {waited}");
            }

            Moment(text, story, moment);
        }

        Line(text, "");
        Line(text, "Why:");
        foreach (string reason in story.Reasons)
        {
            Line(text, $"  {reason}");
        }

        Line(text, "");
        Line(text, "Lines that took part:");
        int width = story.Parts.Max(part => Place(part).Length);
        foreach (TracePart part in story.Parts)
        {
            Line(text, $"  {Place(part).PadRight(width)}  {part.Text}");
            if (part.Note.Length > 0)
            {
                Line(text, $"  {new string(' ', width)}    ^ {part.Note}");
            }
        }

        return text.ToString();
    }

    private static void Moment(StringBuilder text, TraceStory story, TraceMoment moment)
    {
        string when = moment.Scan == 1 ? "at power-up" : string.Create(CultureInfo.InvariantCulture, $"{TraceTimes.Of(moment.Scan, story.ScanMilliseconds)} (scan {moment.Scan})");
        IEnumerable<string> words = moment.Happenings.Select(happening => happening.Words);
        if (moment.Scan == story.Scans)
        {
            words = words.Append($"{story.End.Name} is {story.End.Word}");
        }

        foreach (string line in words)
        {
            Line(text, $"{when.PadRight(TimeWidth)}  {line}");
            when = "";
        }
    }

    private static string Place(TracePart part) => string.Create(CultureInfo.InvariantCulture, $"{part.Path}:{part.Line}");

    private static void Line(StringBuilder text, string words) => text.Append(words.TrimEnd()).Append('\n');
}
