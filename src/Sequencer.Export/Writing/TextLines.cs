using System.Text;
using Sequencer.Text;

namespace Sequencer.Export.Writing;

/// <summary>Structured text under construction: indented lines, each block led by where it comes from.</summary>
internal sealed class TextLines
{
    private const int IndentWidth = 2;
    private readonly StringBuilder _text = new();
    private int _depth;

    public void Add(string line)
    {
        if (line.Length > 0)
        {
            _text.Append(' ', _depth * IndentWidth).Append(line);
        }

        _text.Append('\n');
    }

    public void Blank() => Add("");

    /// <summary>A comment; the ends of comments inside it are made harmless.</summary>
    public void Comment(string words) => Add($"(* {Harmless(words)} *)");

    /// <summary>A comment that names the place in the program and says what follows.</summary>
    public void Trace(SourceSpan span, string words) => Comment($"{Place(span)}  {words}");

    /// <summary>File and line, as <c>pit.seq:14</c>; in a module also the use of it, as <c>dosing.seqlib:5 for DOSE1, pit.seq:14</c>.</summary>
    public static string Place(SourceSpan span)
    {
        string line = FormattableString.Invariant($"{Path.GetFileName(span.Source.Path)}:{span.Start.Line}");
        return span.Source.Use is { } use ? $"{line} for {use.Name}, {Place(use.Place)}" : line;
    }

    public void Section(string title)
    {
        Blank();
        Comment(new string('-', 78));
        Comment(title);
        Comment(new string('-', 78));
    }

    public void Open(string line)
    {
        Add(line);
        _depth++;
    }

    public void Else(string line)
    {
        _depth--;
        Add(line);
        _depth++;
    }

    public void Close(string line)
    {
        _depth--;
        Add(line);
    }

    /// <summary>Ends a block that has no closing word.</summary>
    public void Leave() => _depth--;

    public override string ToString() => _text.ToString();

    internal static string Harmless(string words) =>
        words.Replace("*)", "* )", StringComparison.Ordinal).Replace("(*", "( *", StringComparison.Ordinal);
}
