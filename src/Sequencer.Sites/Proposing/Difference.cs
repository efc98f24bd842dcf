using System.Globalization;
using Sequencer.Language.Formatting;
using Sequencer.Text;

namespace Sequencer.Sites.Proposing;

/// <summary>An addition as a person puts it in: the file, the line, and the lines around it, in the one layout of programs.</summary>
internal sealed class Difference
{
    private Difference(string place, IReadOnlyList<string> lines)
    {
        Place = place;
        Lines = lines;
    }

    /// <summary>As <c>pit.seq, after line 46</c>.</summary>
    public string Place { get; }

    /// <summary>Lines that begin with <c>+</c>, <c>-</c> or a blank.</summary>
    public IReadOnlyList<string> Lines { get; }

    /// <param name="candidate">The addition.</param>
    /// <param name="root">What is left out at the beginning of the file's path.</param>
    public static Difference Of(Candidate candidate, string root)
    {
        SourceText before = candidate.File;
        SourceText after = candidate.Mended() ?? throw new InvalidOperationException("a mend that was proved can be put in");
        string[] laidOut = (ProgramFormatter.Format(after).Text ?? after.Content).Split('\n');
        int line = before.Position(candidate.Edit.Span.Span.Start).Line;
        string file = before.Path.StartsWith(root, StringComparison.Ordinal) ? before.Path[root.Length..] : before.Path;
        if (candidate.Name is { } name)
        {
            string added = laidOut.First(text => text.TrimStart().StartsWith($"interlock {name} ", StringComparison.Ordinal));
            string above = line > 1 ? before.Line(line - 1).ToString() : "";
            string place = string.Create(CultureInfo.InvariantCulture, $"{file}, after line {line - 1}");
            return new Difference(place, above.Trim().Length == 0 ? ["+" + added] : [" " + above, "+" + added]);
        }

        int last = before.Position(candidate.Edit.Span.Span.End).Line;
        int more = after.LineCount - before.LineCount;
        return new Difference(
            string.Create(CultureInfo.InvariantCulture, $"{file}, line {line}"),
            [.. Rows(before, line, last).Select(row => "-" + row), .. Rows(after, line, last + more).Select(row => "+" + row)]);
    }

    private static IEnumerable<string> Rows(SourceText text, int first, int last) =>
        Enumerable.Range(first, last - first + 1).Select(line => text.Line(line).ToString());
}
