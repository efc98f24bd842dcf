using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Remembering;

/// <summary>
/// Ways to goals as text: the inputs' names, then for each way its goal and, a line for each segment, its scans and the inputs that
/// differ from the segment before. Inputs and goals are known by name, so a way survives an edit of the program; whether it still leads there
/// is found out by playing it.
/// </summary>
internal static class WayText
{
    private const string Head = "ways 1";
    private const char Tab = '\t';

    /// <summary>Under what the ways of a system are kept: its name, since a way is worth trying after any edit.</summary>
    public static string Key(TransitionSystem system) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{Head}\n{system.Name}")));

    public static string Write(TransitionSystem system, IEnumerable<(Goal Goal, Trace Way)> ways)
    {
        StringBuilder text = new();
        text.Append(Head).Append('\n').AppendJoin(Tab, system.Inputs.Select(input => input.Name)).Append('\n');
        foreach ((Goal goal, Trace way) in ways)
        {
            text.Append("way").Append(Tab).Append(goal.Name).Append('\n');
            long[] before = new long[system.Inputs.Length];
            foreach (TraceSegment segment in way.Segments)
            {
                text.Append(segment.Scans);
                for (int input = 0; input < before.Length; input++)
                {
                    if (segment.Inputs[input] != before[input])
                    {
                        before[input] = segment.Inputs[input];
                        text.Append(CultureInfo.InvariantCulture, $"{Tab}{input}={before[input]}");
                    }
                }

                text.Append('\n');
            }
        }

        return text.ToString();
    }

    /// <summary>For each goal of the system a way, or null. Nothing about the text is trusted; where it is none, there is no way.</summary>
    public static Trace?[] Read(TransitionSystem system, string text)
    {
        Trace?[] ways = new Trace?[system.Goals.Length];
        Dictionary<string, int> goals = system.Goals.Select((goal, index) => (goal.Name, index)).ToDictionary(pair => pair.Name, pair => pair.index, StringComparer.Ordinal);
        Dictionary<string, int> inputs = system.Inputs.Select((input, index) => (input.Name, index)).ToDictionary(pair => pair.Name, pair => pair.index, StringComparer.Ordinal);
        string[] lines = text.Split('\n');
        if (lines.Length < 2 || lines[0] != Head)
        {
            return ways;
        }

        int[] own = [.. lines[1].Split(Tab).Select(name => inputs.GetValueOrDefault(name, -1))];
        int? goal = null;
        ImmutableArray<TraceSegment>.Builder segments = ImmutableArray.CreateBuilder<TraceSegment>();
        long[] values = [];
        foreach (string line in lines.Skip(2).Append("way"))
        {
            string[] words = line.Split(Tab);
            if (words[0] == "way")
            {
                Take();
                goal = words.Length == 2 && goals.TryGetValue(words[1], out int known) ? known : null;
                values = [.. system.Inputs.Select(input => Math.Clamp(0, input.Range.Minimum, input.Range.Maximum))];
            }
            else if (goal is not null && line.Length > 0)
            {
                bool said = int.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out int scans) && scans > 0 && Apply(words, own, values);
                goal = said ? goal : null;
                segments.Add(new TraceSegment([.. values], scans));
            }
        }

        return ways;

        void Take()
        {
            if (goal is { } wanted && segments.Count > 0)
            {
                ways[wanted] = new Trace(segments.ToImmutable());
            }

            segments.Clear();
        }
    }

    private static bool Apply(string[] words, int[] own, long[] values)
    {
        foreach (string change in words.Skip(1))
        {
            string[] sides = change.Split('=');
            if (sides.Length != 2
                || !int.TryParse(sides[0], NumberStyles.None, CultureInfo.InvariantCulture, out int input) || input >= own.Length
                || !long.TryParse(sides[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value))
            {
                return false;
            }

            if (own[input] >= 0)
            {
                values[own[input]] = value;
            }
        }

        return true;
    }
}
