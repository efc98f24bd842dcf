using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Simulation.Traces;

/// <summary>The lines of the program that took part in a run, each with what it did.</summary>
internal static class TraceParts
{
    private const int MostParts = 40;
    private static readonly string[] Ways = ["go ", "join ", "limit "];
    private static readonly string[] Heads = ["unit ", "step ", "language "];

    public static ImmutableArray<TracePart> Of(TraceStory story)
    {
        List<(Origin Origin, string Note)> found = [(story.End.Origin, $"{story.End.Word} here")];
        foreach ((string name, long scan) in story.Facts.Definitions)
        {
            Definition definition = story.History.System.Definitions.First(one => one.Name == name);
            if (Note(story, definition, scan) is { } note)
            {
                found.Add((definition.Origin, note));
            }
        }

        found.AddRange(story.History.System.States
            .Where(state => state.Purpose == StatePurpose.Control && story.Facts.HasState(state.Variable.Index) && !IsSignal(story, state.Origin))
            .Where(state => !TextOf(state.Origin).StartsWith("output ", StringComparison.Ordinal))
            .Select(state => (state.Origin, "")));
        foreach (OutputVariable output in story.Outputs.Where(output => story.IsNamed(output.Name)))
        {
            found.Add((output.Origin, ""));
            found.AddRange(InterlocksOf(story, output).Select(interlock => (interlock.Definition.Origin, Blocks(interlock.IsBlocking))));
        }

        return
        [
            .. found.Where(part => !Heads.Any(head => TextOf(part.Origin).StartsWith(head, StringComparison.Ordinal)))
                .GroupBy(part => (part.Origin.Span.Written.Source.Path, part.Origin.Span.Start.Line))
                .OrderBy(line => line.Key.Path, StringComparer.Ordinal).ThenBy(line => line.Key.Line)
                .Select(line => new TracePart(
                    Below(story.Root, line.Key.Path),
                    line.Key.Line,
                    TextOf(line.First().Origin),
                    string.Join(", ", line.Select(part => part.Note).Where(note => note.Length > 0).Distinct().Order(StringComparer.Ordinal))))
                .Take(MostParts),
        ];
    }

    /// <summary>The interlocks and exclusions on an output, with whether each blocks it in the last scan.</summary>
    public static IEnumerable<(Definition Definition, bool IsBlocking)> InterlocksOf(TraceStory story, OutputVariable output)
    {
        Definition? blocked = story.History.System.Definitions.FirstOrDefault(definition => definition.Name == output.Name + ".blocked");
        return blocked is null
            ? []
            : new NamedParts(story.History.System.Definitions).Of(blocked.Value)
                .Concat(blocked.Value.Operands.SelectMany(new NamedParts(story.History.System.Definitions).Of))
                .Where(definition => definition.Name.EndsWith(".blocks", StringComparison.Ordinal))
                .DistinctBy(definition => definition.Name)
                .Select(definition => (definition, story.History.Definition(definition.Name)?.At(story.Scans) == 1));
    }

    /// <summary>A transition from step to step.</summary>
    public static bool IsWay(Definition definition) =>
        definition.Name.Contains(".step", StringComparison.Ordinal) && Ways.Any(way => TextOf(definition.Origin).StartsWith(way, StringComparison.Ordinal))
        && definition.Name.Contains("go_", StringComparison.Ordinal);

    /// <summary>The first line that a thing was made from, without the blanks of its layout.</summary>
    public static string TextOf(Origin origin)
    {
        SourceSpan written = origin.Span.Written;
        return string.Join(' ', written.Source.Line(written.Start.Line).ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    public static string Blocks(bool isBlocking) => isBlocking ? "blocks" : "does not block";

    private static string Below(string root, string path) => path.StartsWith(root, StringComparison.Ordinal) ? path[root.Length..] : path;

    private static string? Note(TraceStory story, Definition definition, long scan)
    {
        bool isSo = story.History.Definition(definition.Name)?.At(scan) == 1;
        string at = TraceTimes.Of(scan, story.ScanMilliseconds);
        if (IsWay(definition))
        {
            return isSo ? $"taken at {at}" : null;
        }

        string last = definition.Name[(definition.Name.LastIndexOf('.') + 1)..];
        return last switch
        {
            "blocks" => Blocks(isSo),
            "asks" or "gives" => isSo ? $"asks for it at {at}" : null,
            "demand" or "blocked" => null,
            _ => !isSo || IsSignal(story, definition.Origin) ? null : "",
        };
    }

    /// <summary>The line of an input, told only where the end names it or it is away from rest.</summary>
    private static bool IsSignal(TraceStory story, Origin origin)
    {
        string[] words = TextOf(origin).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words is ["input", ..] && !(words.Length > 1 && story.IsNamed(words[1]));
    }
}
