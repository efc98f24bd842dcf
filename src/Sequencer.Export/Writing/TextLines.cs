using System.Text;
using Sequencer.Text;

namespace Sequencer.Export.Writing;

/// <summary>Structured text under construction: indented lines, each block led by where it comes from.</summary>
internal sealed class TextLines
{
    private const int IndentWidth = 2;

    /// <summary>Longer lines go on in the next where an AND or OR allows it; the words of a clause at a blank.</summary>
    private const int Widest = 118;

    /// <summary>Before the words of a clause that go on in the next line.</summary>
    private const string GoesOn = "  ";

    private readonly StringBuilder _text = new();
    private int _depth;

    public void Add(string line)
    {
        int indent = _depth * IndentWidth;
        while (indent + line.Length > Widest && !line.Contains("(*", StringComparison.Ordinal) && BreakOf(line, Widest - indent) is { } place)
        {
            _text.Append(' ', indent).Append(line, 0, place).Append('\n');
            line = line[(place + 1)..];
            indent = (_depth + 2) * IndentWidth;
        }

        if (line.Length > 0)
        {
            _text.Append(' ', indent).Append(line);
        }

        _text.Append('\n');
    }

    /// <summary>The blank before the last operator in so many letters; before the first behind them where there is none.</summary>
    private static int? BreakOf(string line, int letters)
    {
        int place = Math.Max(Last(" OR "), Last(" AND "));
        return place > 0 ? place : null;

        int Last(string word) => line.LastIndexOf(word, Math.Min(letters, line.Length) - 1, StringComparison.Ordinal) is > 0 and int found
            ? found
            : line.IndexOf(word, StringComparison.Ordinal);
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

    /// <summary>The clause that follows, in the author's own words; its layout has no part in it. Its line is in the head of the block.</summary>
    /// <param name="span">The clause.</param>
    /// <param name="lead">What is said before its words.</param>
    public void Clause(SourceSpan span, string lead = "")
    {
        string[] words = span.Text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        string use = span.Source.Use is { } module ? $"; {Path.GetFileName(span.Source.Path)} for {module.Name}" : "";
        string text = $"{(lead.Length == 0 ? "" : $"{lead}: ")}{string.Join(' ', words)}{use}";
        int room = Widest - (_depth * IndentWidth) - "(*  *)".Length;
        while (text.Length > room && text.LastIndexOf(' ', room) is var place && place > GoesOn.Length)
        {
            Comment(text[..place]);
            text = GoesOn + text[(place + 1)..];
        }

        Comment(text);
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

    /// <summary>Lines written before, as they are.</summary>
    public void Append(TextLines lines) => _text.Append(lines._text);

    /// <summary>Ends a block that has no closing word.</summary>
    public void Leave() => _depth--;

    public override string ToString() => _text.ToString();

    internal static string Harmless(string words) =>
        words.Replace("*)", "* )", StringComparison.Ordinal).Replace("(*", "( *", StringComparison.Ordinal);
}
