using System.Collections.Immutable;
using Sequencer.Language.Modules;
using Sequencer.Language.Parsing;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Formatting;

/// <summary>
/// Brings a program or a library into the one layout of spec/language.md. Only blanks and line ends change: the tokens,
/// the comments and what each comment belongs to stay, which is looked at before the result is given out.
/// </summary>
public static class ProgramFormatter
{
    /// <summary>Reports what keeps the lines from being read, SEQ01xx mostly, and then gives no text.</summary>
    public static FormatResult Format(SourceText source)
    {
        DiagnosticBag diagnostics = new();
        ParseCache cache = new();
        ImmutableArray<(string File, SourceSpan Span)> uses = IsLibrary(source)
            ? LibraryParser.Parse(source, diagnostics).Uses
            : [.. ProgramParser.Parse(source, cache, diagnostics).Statements.Where(placed => placed.Statement is UseSyntax).Select(Used)];
        if (diagnostics.HasErrors)
        {
            return new FormatResult(null, diagnostics.InOrder(), uses);
        }

        IReadOnlyList<LayoutItem> items = LayoutReader.Read(source, cache);
        SourceText result = new(source.Path, new LayoutWriter(BlankLines.Ordered(items)).Write());
        if (!SameContent.Of(source, result))
        {
            throw new InvalidOperationException($"laying out {source.Path} would have changed what it says");
        }

        return new FormatResult(result.Content, diagnostics.InOrder(), uses);
    }

    private static bool IsLibrary(SourceText source) =>
        source.Path.EndsWith(".seqlib", StringComparison.Ordinal) || new LogicalLineReader(source.Content).Next() is { } first && source.Content.AsSpan(first.Span.Start).StartsWith("library");

    private static (string File, SourceSpan Span) Used(PlacedStatement placed)
    {
        UseSyntax use = (UseSyntax)placed.Statement;
        return (use.File.Text, new SourceSpan(placed.Source, use.File.Span.Shift(placed.Offset)));
    }
}
