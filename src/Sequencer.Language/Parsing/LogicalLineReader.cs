using System.Text;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>
/// Cuts a file into logical lines without recursion, so that the grammar only ever sees one statement
/// of bounded length and bracket depth (spec/language.md, Text).
/// </summary>
internal sealed class LogicalLineReader
{
    private readonly string _text;
    private readonly StringBuilder _documentation = new();
    private readonly Stack<int> _openBrackets = new();
    private int _position;
    private int _start;
    private int _end;
    private bool _textIsOpen;
    private LineFault? _fault;

    public LogicalLineReader(string text) => _text = text;

    /// <summary>The next logical line; null at the end of the file.</summary>
    public LogicalLine? Next()
    {
        _fault = null;
        while (SkipBlanks())
        {
            _start = _position;
            SkipComment();
            if (_fault is not null)
            {
                return new LogicalLine(TextSpan.Between(_start, _position), string.Empty, _fault);
            }
        }

        return _position < _text.Length ? ReadStatement() : null;
    }

    private LogicalLine ReadStatement()
    {
        string documentation = _documentation.ToString();
        _documentation.Clear();
        _start = _position;
        _textIsOpen = false;
        _openBrackets.Clear();
        ReadPhysicalLine();
        while (Continues())
        {
            while (SkipBlanks())
            {
                SkipComment();
            }

            ReadPhysicalLine();
        }

        CloseLine();
        return new LogicalLine(TextSpan.Between(_start, _end), documentation, _fault);
    }

    /// <summary>Over blanks and line ends; whether a comment stands there.</summary>
    private bool SkipBlanks()
    {
        while (_position < _text.Length && _text[_position] is (' ' or '\t' or '\n'))
        {
            _position++;
        }

        return _position < _text.Length && AtComment();
    }

    private bool AtComment() => _text[_position] == '-' && _position + 1 < _text.Length && _text[_position + 1] == '-';

    private void SkipComment()
    {
        int end = LineEnd(_position);
        if (_position + 2 < end && _text[_position + 2] == '|')
        {
            _documentation.Append(_documentation.Length == 0 ? string.Empty : "\n").Append(_text.AsSpan(_position + 3, end - _position - 3).Trim());
        }

        for (int index = _position; index < end; index++)
        {
            CheckCharacter(index);
        }

        _position = end;
    }

    private void ReadPhysicalLine()
    {
        while (_position < _text.Length && _text[_position] != '\n')
        {
            char character = _text[_position];
            if (character == '-' && AtComment())
            {
                SkipComment();
                return;
            }

            if (character is not (' ' or '\t'))
            {
                _end = _position + 1;
            }

            if (character == '"')
            {
                SkipText();
                continue;
            }

            CountBracket(character);
            CheckCharacter(_position);
            _position++;
        }
    }

    private void SkipText()
    {
        int lineEnd = LineEnd(_position);
        int close = _text.IndexOf('"', _position + 1, lineEnd - _position - 1);
        int end = close < 0 ? lineEnd : close + 1;
        for (int index = _position; index < end; index++)
        {
            CheckCharacter(index);
        }

        if (close < 0)
        {
            Fault(_position, lineEnd, ParseDiagnostics.TextNotClosed);
            _textIsOpen = true;
            _openBrackets.Clear();
        }

        _end = end;
        _position = end;
    }

    private void CountBracket(char character)
    {
        if (character == '(')
        {
            _openBrackets.Push(_position);
            if (_openBrackets.Count > ProgramLimits.BracketDepth)
            {
                Fault(_position, _position + 1, ParseDiagnostics.BracketsTooDeep);
            }
        }
        else if (character == ')' && !_openBrackets.TryPop(out _))
        {
            Fault(_position, _position + 1, ParseDiagnostics.BracketNotOpened);
        }
    }

    private void CheckCharacter(int index)
    {
        char character = _text[index];
        if (character is (>= ' ' and <= '~') or '\t')
        {
            return;
        }

        bool paired = (char.IsHighSurrogate(character) && index + 1 < _text.Length && char.IsLowSurrogate(_text[index + 1]))
            || (char.IsLowSurrogate(character) && index > 0 && char.IsHighSurrogate(_text[index - 1]));
        if (!paired && !InvisibleCharacters.IsVisible(character))
        {
            Fault(index, index + 1, span => ParseDiagnostics.InvisibleCharacter(span, character));
        }
    }

    private bool Continues()
    {
        if (_textIsOpen || (_openBrackets.Count == 0 && !StatementWords.Continue(_text.AsSpan(_start, _end - _start))))
        {
            return false;
        }

        int next = NextContent();
        return next < _text.Length && !StatementWords.Begin(_text.AsSpan(next, LineEnd(next) - next));
    }

    private int NextContent()
    {
        int index = _position;
        while (index < _text.Length)
        {
            if (_text[index] is ' ' or '\t' or '\n')
            {
                index++;
            }
            else if (_text.AsSpan(index).StartsWith("--", StringComparison.Ordinal))
            {
                index = LineEnd(index);
            }
            else
            {
                break;
            }
        }

        return index;
    }

    private void CloseLine()
    {
        if (_openBrackets.TryPop(out int open))
        {
            Fault(open, open + 1, ParseDiagnostics.BracketNotClosed);
        }

        if (_end - _start > ProgramLimits.LineCharacters && _fault is null)
        {
            Fault(_start, LineEnd(_start), ParseDiagnostics.LineTooLong);
        }
    }

    private int LineEnd(int from)
    {
        int end = _text.IndexOf('\n', from);
        return end < 0 ? _text.Length : end;
    }

    private void Fault(int start, int end, Func<SourceSpan, Diagnostic> describe) =>
        _fault ??= new LineFault(TextSpan.Between(start - _start, Math.Max(start, end) - _start), describe);
}
