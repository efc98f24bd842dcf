using Sequencer.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Sequencer.Plant.Yaml;

/// <summary>
/// Reads a small, strict part of YAML 1.2: block and flow groups, lists and scalars. Anchors,
/// aliases, tags and merge keys are refused (SEQ0803). Takes the text, returns the top group, or
/// null where nothing can be used; reports SEQ0801 to SEQ0804 and SEQ0812.
/// </summary>
public static class YamlReader
{
    public static YamlMapping? Read(SourceText source, DiagnosticBag diagnostics)
    {
        if (source.Content.Length > YamlLimits.Characters)
        {
            diagnostics.Add(YamlDiagnostics.OverLimit(source.At(0, 0), "characters", YamlLimits.Characters));
            return null;
        }

        YamlTreeBuilder builder = new(source, diagnostics);
        Parser parser = new(new StringReader(source.Content[Spans.ByteOrderMark(source)..]));
        while (!builder.IsStopped && Move(parser, source, diagnostics) is { } parsed)
        {
            builder.Take(parsed);
        }

        return parser.Current is null or StreamEnd ? builder.Finish() : null;
    }

    /// <summary>
    /// The next event; null at the end or where the text is no YAML. Of the parser nothing but this
    /// call is guarded: besides its own exception it lets others through for some malformed texts
    /// (a tag that is no address, a byte order mark inside a flow group).
    /// </summary>
    private static ParsingEvent? Move(Parser parser, SourceText source, DiagnosticBag diagnostics)
    {
        try
        {
            return parser.MoveNext() ? parser.Current : null;
        }
        catch (YamlException exception)
        {
            diagnostics.Add(YamlDiagnostics.NotYaml(Spans.Between(source, exception.Start, exception.End), FirstSentence(exception)));
        }
        catch (Exception exception) when (exception is ArgumentException or InvalidOperationException or FormatException or IndexOutOfRangeException)
        {
            SourceSpan place = parser.Current is { } last ? Spans.Of(source, last) : source.At(0, 0);
            diagnostics.Add(YamlDiagnostics.NotYaml(place, "unreadable from here on"));
        }

        return null;
    }

    private static string FirstSentence(YamlException exception)
    {
        string text = (exception.InnerException ?? exception).Message.ReplaceLineEndings(" ").Trim().TrimEnd('.');
        return text.Length == 0 ? "unreadable" : char.ToLowerInvariant(text[0]) + text[1..];
    }

    /// <summary>The parser's marks as spans of ours.</summary>
    internal static class Spans
    {
        /// <summary>1 where the text starts with a byte order mark, which the parser is not shown; else 0.</summary>
        public static int ByteOrderMark(SourceText source) => source.Content.StartsWith('\uFEFF') ? 1 : 0;

        public static SourceSpan Between(SourceText source, Mark start, Mark end)
        {
            int skipped = ByteOrderMark(source);
            int from = (int)Math.Clamp(start.Index + skipped, 0, source.Content.Length);
            int to = (int)Math.Clamp(end.Index + skipped, from, source.Content.Length);
            return source.At(from, to - from);
        }

        public static SourceSpan Of(SourceText source, ParsingEvent parsed) => Between(source, parsed.Start, parsed.End);
    }
}
