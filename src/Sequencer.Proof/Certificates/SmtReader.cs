using System.Collections.Immutable;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Reads the brackets of an SMT-LIB file: commands of names between bars, plain words and numerals,
/// comments left out. Nothing else of SMT-LIB is in a certificate. Size and depth are limited and the
/// reader does not recurse, since the file may come from anywhere.
/// </summary>
internal sealed class SmtReader
{
    /// <summary>Characters in one file.</summary>
    public const int LargestText = 128 * 1024 * 1024;

    /// <summary>Brackets in brackets. A writer names what would lie deeper (<see cref="SmtTranslation"/>).</summary>
    public const int DeepestNesting = 64;

    private readonly string _text;
    private readonly Stack<ImmutableArray<SmtTerm>.Builder> _open = new();
    private readonly ImmutableArray<SmtTerm>.Builder _commands = ImmutableArray.CreateBuilder<SmtTerm>();
    private int _place;

    private SmtReader(string text)
    {
        _text = text;
    }

    /// <summary>The commands of the text, or why it cannot be read.</summary>
    public static bool TryRead(string text, out ImmutableArray<SmtTerm> commands, out string reason)
    {
        SmtReader reader = new(text);
        reason = text.Length > LargestText ? "the file is too large" : reader.ReadAll();
        commands = reader._commands.ToImmutable();
        return reason.Length == 0;
    }

    private string ReadAll()
    {
        while (_place < _text.Length)
        {
            string problem = ReadOne(_text[_place]);
            if (problem.Length > 0)
            {
                return $"line {Line()}: {problem}";
            }
        }

        return _open.Count == 0 ? string.Empty : "the file ends inside brackets";
    }

    private string ReadOne(char character)
    {
        switch (character)
        {
            case ' ' or '\n':
                _place++;
                return string.Empty;
            case ';':
                _place = End(_text.IndexOf('\n', _place));
                return string.Empty;
            case '(':
                _place++;
                _open.Push(ImmutableArray.CreateBuilder<SmtTerm>());
                return _open.Count <= DeepestNesting ? string.Empty : $"more than {DeepestNesting} brackets inside one another";
            case ')':
                _place++;
                return Close();
            case '|':
                return ReadName();
            default:
                return ReadWord();
        }
    }

    private string Close()
    {
        if (!_open.TryPop(out ImmutableArray<SmtTerm>.Builder? items))
        {
            return "a bracket is closed that was not opened";
        }

        SmtTerm list = SmtTerm.List(items.ToImmutable());
        (_open.TryPeek(out ImmutableArray<SmtTerm>.Builder? outer) ? outer : _commands).Add(list);
        return string.Empty;
    }

    private string ReadName()
    {
        int end = _text.IndexOf('|', _place + 1);
        if (end < 0 || _text.AsSpan(_place, end - _place).ContainsAny('\n', '\\'))
        {
            return "a name is not closed on its line";
        }

        return Add(end + 1);
    }

    private string ReadWord()
    {
        int end = _place;
        while (end < _text.Length && (char.IsAsciiLetterOrDigit(_text[end]) || "-+*<=>:._".Contains(_text[end], StringComparison.Ordinal)))
        {
            end++;
        }

        return end == _place ? $"the character U+{(int)_text[_place]:X4} has no place in a certificate" : Add(end);
    }

    private string Add(int end)
    {
        if (!_open.TryPeek(out ImmutableArray<SmtTerm>.Builder? items))
        {
            return "a word outside brackets";
        }

        items.Add(SmtTerm.Word(_text[_place..end]));
        _place = end;
        return string.Empty;
    }

    private int End(int found) => found < 0 ? _text.Length : found;

    private int Line() => 1 + _text.AsSpan(0, Math.Min(_place, _text.Length)).Count('\n');
}
