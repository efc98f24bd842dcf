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

    public bool IsEmpty => _text.Length == 0;

    public void Blank() => Add("");

    /// <summary>A comment; the ends of comments inside it are made harmless.</summary>
    public void Comment(string words) => Add($"(* {Harmless(words)} *)");

    /// <summary>
    /// A comment that says which clause of the program follows; in a module, for which use of it. Its line is in the head of
    /// the block (<see cref="ClausePlaces"/>).
    /// </summary>
    public void Trace(SourceSpan span, string words) =>
        Comment(span.Source.Use is { } use ? $"{words}; {Path.GetFileName(span.Source.Path)} for {use.Name}" : words);

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

    /// <summary>Lines written before, as they are.</summary>
    public void Append(TextLines lines) => _text.Append(lines._text);

    /// <summary>Ends a block that has no closing word.</summary>
    public void Leave() => _depth--;

    public override string ToString() => _text.ToString();

    internal static string Harmless(string words) =>
        words.Replace("*)", "* )", StringComparison.Ordinal).Replace("(*", "( *", StringComparison.Ordinal);
}
