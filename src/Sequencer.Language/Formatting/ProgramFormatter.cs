using Sequencer.Language.Parsing;
using Sequencer.Text;

namespace Sequencer.Language.Formatting;

/// <summary>
/// Brings a program into the one layout of spec/language.md. Only blanks and line ends change: the tokens, the
/// comments and what each comment belongs to stay, which is looked at before the result is given out.
/// </summary>
public static class ProgramFormatter
{
    /// <summary>Reports SEQ01xx, and then gives no text.</summary>
    public static FormatResult Format(SourceText source)
    {
        DiagnosticBag diagnostics = new();
        ParseCache cache = new();
        ProgramParser.Parse(source, cache, diagnostics);
        if (diagnostics.HasErrors)
        {
            return new FormatResult(null, diagnostics.InOrder());
        }

        IReadOnlyList<LayoutItem> items = LayoutReader.Read(source, cache);
        SourceText result = new(source.Path, new LayoutWriter(BlankLines.Ordered(items)).Write());
        if (!SameContent.Of(source, result))
        {
            throw new InvalidOperationException($"laying out {source.Path} would have changed what it says");
        }

        return new FormatResult(result.Content, diagnostics.InOrder());
    }
}
