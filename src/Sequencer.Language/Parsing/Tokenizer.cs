using System.Collections.Immutable;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>
/// Cuts one logical line into tokens. Sprache then works on a few dozen tokens in place of some hundred
/// characters, each of which would cost it about 3 kB of garbage.
/// </summary>
internal sealed class Tokenizer
{
    private static readonly string[] TwoSigns = ["..", "<=", ">="];
    private readonly string _line;
    private readonly ImmutableArray<Token>.Builder _tokens = ImmutableArray.CreateBuilder<Token>();
    private int _position;

    public Tokenizer(string line) => _line = line;

    /// <summary>What makes the line unreadable; the tokens before it are kept.</summary>
    public LineFault? Fault { get; private set; }

    public ImmutableArray<Token> Read()
    {
        while (_position < _line.Length && Fault is null)
        {
            char character = _line[_position];
            if (character is ' ' or '\t' or '\n')
            {
                _position++;
            }
            else if (StartsWith("--"))
            {
                int end = _line.IndexOf('\n', _position);
                _position = end < 0 ? _line.Length : end;
            }
            else
            {
                ReadToken(character);
            }
        }

        return _tokens.ToImmutable();
    }

    private void ReadToken(char character)
    {
        if (char.IsAsciiLetter(character))
        {
            ReadWord();
        }
        else if (char.IsAsciiDigit(character))
        {
            ReadNumber();
        }
        else if (character == '"')
        {
            ReadText();
        }
        else if (character == '%')
        {
            ReadPercent();
        }
        else
        {
            ReadSymbol(character);
        }
    }

    private void ReadWord()
    {
        int end = WordEnd(_position);
        const string deEnergised = "de-energised";
        if (StartsWith(deEnergised) && WordEnd(_position + deEnergised.Length) == _position + deEnergised.Length)
        {
            end = _position + deEnergised.Length;
        }

        Add(TokenKind.Word, end);
    }

    /// <summary>A word may hold a stroke before a letter: <c>m3/h</c>.</summary>
    private int WordEnd(int from)
    {
        int end = from;
        while (end < _line.Length && (char.IsAsciiLetterOrDigit(_line[end]) || _line[end] == '_' || IsStroke(end)))
        {
            end++;
        }

        return end;
    }

    private bool IsStroke(int index) => _line[index] == '/' && index + 1 < _line.Length && char.IsAsciiLetter(_line[index + 1]);

    private void ReadNumber()
    {
        int end = DigitsEnd(_position);
        if (end + 1 < _line.Length && _line[end] == '.' && char.IsAsciiDigit(_line[end + 1]))
        {
            end = DigitsEnd(end + 1);
        }

        int wordEnd = WordEnd(end);
        if (IsVote(end, wordEnd))
        {
            Add(TokenKind.Vote, wordEnd);
        }
        else if (wordEnd > end)
        {
            Fail(_position, wordEnd, ParseDiagnostics.NumberRunsIntoWord);
        }
        else if (end - _position > ProgramLimits.NumberDigits)
        {
            Fail(_position, end, ParseDiagnostics.NumberTooLong);
        }
        else
        {
            Add(TokenKind.Number, end);
        }
    }

    /// <summary>Digits stand before <paramref name="end"/>; <c>oo</c> and digits follow.</summary>
    private bool IsVote(int end, int wordEnd) =>
        wordEnd > end + 2 && _line.AsSpan(end, 2) is "oo" && DigitsEnd(end + 2) == wordEnd && end - _position + wordEnd - end <= 6;

    private int DigitsEnd(int from)
    {
        int end = from;
        while (end < _line.Length && char.IsAsciiDigit(_line[end]))
        {
            end++;
        }

        return end;
    }

    private void ReadText()
    {
        int close = _line.IndexOf('"', _position + 1);
        if (close < 0)
        {
            Fail(_position, _line.Length, ParseDiagnostics.TextNotClosed);
            return;
        }

        Add(TokenKind.Text, close + 1);
    }

    private void ReadPercent()
    {
        int end = _position + 1;
        if (end < _line.Length && char.IsAsciiLetter(_line[end]))
        {
            while (end < _line.Length && (char.IsAsciiLetterOrDigit(_line[end]) || IsInnerPoint(end)))
            {
                end++;
            }

            Add(TokenKind.Address, end);
            return;
        }

        Add(TokenKind.Word, end < _line.Length && IsStroke(end) ? WordEnd(end) : end);
    }

    private bool IsInnerPoint(int index) => _line[index] == '.' && index + 1 < _line.Length && char.IsAsciiDigit(_line[index + 1]);

    private void ReadSymbol(char character)
    {
        if (Array.Exists(TwoSigns, StartsWith))
        {
            Add(TokenKind.Symbol, _position + 2);
        }
        else if (character is '.' or '<' or '>' or '+' or '-' or '(' or ')' or ',' or '=')
        {
            Add(TokenKind.Symbol, _position + 1);
        }
        else
        {
            int length = char.IsHighSurrogate(character) && _position + 1 < _line.Length ? 2 : 1;
            string sign = _line.Substring(_position, length);
            Fail(_position, _position + length, span => ParseDiagnostics.UnusedCharacter(span, sign));
        }
    }

    private bool StartsWith(string text) => string.CompareOrdinal(_line, _position, text, 0, text.Length) == 0;

    private void Add(TokenKind kind, int end)
    {
        _tokens.Add(new Token(kind, _line[_position..end], TextSpan.Between(_position, end)));
        _position = end;
    }

    private void Fail(int start, int end, Func<SourceSpan, Diagnostic> describe)
    {
        Fault = new LineFault(TextSpan.Between(start, end), describe);
        _position = _line.Length;
    }
}
