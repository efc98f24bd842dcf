using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Parsing;

/// <summary>Splits a file into tokens; comments and blanks are dropped, mistakes reported and passed over.</summary>
internal sealed class Lexer
{
    private static readonly ImmutableArray<string> Symbols =
    [
        ":=", "=>", "<>", "<=", ">=", "**", "..",
        "+", "-", "*", "/", "=", "<", ">", "(", ")", "[", "]", ",", ";", ":", ".", "&", "^", "#",
    ];

    private readonly SourceText _source;
    private readonly string _text;
    private readonly DiagnosticBag _diagnostics;
    private readonly ImmutableArray<Token>.Builder _tokens = ImmutableArray.CreateBuilder<Token>();
    private int _at;

    private Lexer(SourceText source, DiagnosticBag diagnostics)
    {
        _source = source;
        _text = source.Content;
        _diagnostics = diagnostics;
    }

    /// <summary>The tokens of the file, ended by one of kind <see cref="TokenKind.End"/>.</summary>
    public static ImmutableArray<Token> Read(SourceText source, DiagnosticBag diagnostics)
    {
        Lexer lexer = new(source, diagnostics);
        while (lexer.SkipBlanks())
        {
            lexer.ReadToken();
        }

        lexer._tokens.Add(new Token(TokenKind.End, "", 0, source.At(source.Content.Length, 0)));
        return lexer._tokens.ToImmutable();
    }

    private char Current => Peek(0);

    private char Peek(int ahead) => _at + ahead < _text.Length ? _text[_at + ahead] : '\0';

    /// <summary>False at the end of the file.</summary>
    private bool SkipBlanks()
    {
        while (_at < _text.Length)
        {
            if (char.IsWhiteSpace(Current))
            {
                _at++;
            }
            else if (Current == '/' && Peek(1) == '/')
            {
                int end = _text.IndexOf('\n', _at);
                _at = end < 0 ? _text.Length : end;
            }
            else if ((Current == '(' && Peek(1) == '*') || (Current == '/' && Peek(1) == '*'))
            {
                SkipComment(Current == '(' ? "*)" : "*/");
            }
            else
            {
                return true;
            }
        }

        return false;
    }

    private void SkipComment(string closing)
    {
        int end = _text.IndexOf(closing, _at + 2, StringComparison.Ordinal);
        if (end < 0)
        {
            _diagnostics.Add(StructuredTextDiagnostics.UnterminatedComment(_source.At(_at, 2)));
            _at = _text.Length;
            return;
        }

        _at = end + 2;
    }

    private void ReadToken()
    {
        if (char.IsAsciiLetter(Current) || Current == '_')
        {
            ReadWord();
        }
        else if (char.IsAsciiDigit(Current))
        {
            ReadNumber();
        }
        else if (Current == '%')
        {
            int start = _at++;
            SkipWhile(static character => char.IsAsciiLetterOrDigit(character) || character is '.' or '*');
            Add(TokenKind.Address, start);
        }
        else if (Current is '\'' or '"')
        {
            ReadString(_at, Current == '"' ? "WSTRING" : "STRING");
        }
        else
        {
            ReadSymbol();
        }
    }

    private void ReadWord()
    {
        int start = _at;
        SkipWhile(static character => char.IsAsciiLetterOrDigit(character) || character == '_');
        ReadOnlySpan<char> word = _text.AsSpan(start, _at - start);
        if (Current == '#' && !_text.AsSpan(_at).StartsWith("##", StringComparison.Ordinal))
        {
            ReadPrefixed(start, word.ToString());
            return;
        }

        if (word.Contains("__", StringComparison.Ordinal) || word[^1] == '_')
        {
            _diagnostics.Add(StructuredTextDiagnostics.MalformedIdentifier(_source.At(start, word.Length)));
        }

        string text = word.ToString();
        if (ReservedWords.Keywords.Contains(text))
        {
            Add(TokenKind.Keyword, start, text.ToUpperInvariant());
        }
        else
        {
            Add(TokenKind.Name, start);
        }
    }

    private void ReadPrefixed(int start, string prefix)
    {
        _at++;
        switch (prefix.ToUpperInvariant())
        {
            case "STRING" or "WSTRING" or "CHAR" or "WCHAR" when Current is '\'' or '"':
                ReadString(start, prefix.ToUpperInvariant());
                break;
            case "T" or "TIME" or "LT" or "LTIME":
                int value = _at;
                _at += Current == '-' ? 1 : 0;
                SkipWhile(static character => char.IsAsciiLetterOrDigit(character) || character is '_' or '.');
                decimal? milliseconds = DurationText.Parse(_text.AsSpan(value, _at - value), out string fault);
                if (milliseconds is null)
                {
                    _diagnostics.Add(StructuredTextDiagnostics.MalformedLiteral(_source.At(start, _at - start), fault));
                }

                Add(TokenKind.Duration, start, number: milliseconds ?? 0);
                break;
            case "D" or "DATE" or "TOD" or "TIME_OF_DAY" or "DT" or "DATE_AND_TIME" or "LD" or "LDATE" or "LTOD" or "LDT":
                ReadDate(start, prefix);
                break;
            default:
                Add(TokenKind.TypePrefix, start, prefix);
                break;
        }
    }

    private void ReadNumber()
    {
        int start = _at;
        bool real = false;
        SkipDigits();
        if (Current == '#')
        {
            _at++;
            SkipWhile(static character => char.IsAsciiLetterOrDigit(character) || character == '_');
        }
        else
        {
            if (Current == '.' && Peek(1) != '.')
            {
                real = true;
                _at++;
                SkipDigits();
            }

            real |= SkipExponent();
            SkipWhile(static character => char.IsAsciiLetterOrDigit(character) || character == '_');
        }

        ReadOnlySpan<char> text = _text.AsSpan(start, _at - start);
        string? fault = real ? NumberText.FaultOfReal(text) : null;
        long value = 0;
        if (!real)
        {
            value = NumberText.ParseInteger(text, out fault);
        }

        if (fault is not null)
        {
            _diagnostics.Add(StructuredTextDiagnostics.MalformedLiteral(_source.At(start, _at - start), fault));
        }

        Add(real ? TokenKind.Real : TokenKind.Integer, start, number: value);
    }

    private bool SkipExponent()
    {
        int sign = Peek(1) is '+' or '-' ? 1 : 0;
        if (Current is not ('e' or 'E') || !char.IsAsciiDigit(Peek(1 + sign)))
        {
            return false;
        }

        _at += 1 + sign;
        SkipDigits();
        return true;
    }

    private void ReadDate(int start, string prefix)
    {
        int value = _at;
        SkipWhile(static character => char.IsAsciiLetterOrDigit(character) || character is '_' or '.' or '-' or ':');
        if (DateText.FaultOf(prefix, _text.AsSpan(value, _at - value)) is { } fault)
        {
            _diagnostics.Add(StructuredTextDiagnostics.MalformedLiteral(_source.At(start, _at - start), fault));
        }

        Add(TokenKind.Opaque, start, DateText.TypeOf(prefix));
    }

    /// <summary><c>$</c> takes the meaning from the character behind it, a quote too.</summary>
    private void ReadString(int start, string type)
    {
        char quote = Current;
        _at++;
        while (_at < _text.Length && Current != quote && Current != '\n')
        {
            _at += Current == '$' && Peek(1) is not ('\0' or '\n') ? 2 : 1;
        }

        if (Current == quote && _at < _text.Length)
        {
            _at++;
        }
        else
        {
            _diagnostics.Add(StructuredTextDiagnostics.MalformedLiteral(_source.At(start, _at - start), "its closing quote is missing on this line"));
        }

        Add(TokenKind.Opaque, start, type);
    }

    private void ReadSymbol()
    {
        foreach (string symbol in Symbols)
        {
            if (string.CompareOrdinal(_text, _at, symbol, 0, symbol.Length) == 0)
            {
                int start = _at;
                _at += symbol.Length;
                Add(TokenKind.Symbol, start, symbol);
                return;
            }
        }

        int length = char.IsSurrogatePair(Current, Peek(1)) ? 2 : 1;
        _diagnostics.Add(StructuredTextDiagnostics.UnexpectedCharacter(_source.At(_at, length)));
        _at += length;
    }

    private void SkipDigits() => SkipWhile(static character => char.IsAsciiDigit(character) || character == '_');

    private void SkipWhile(Func<char, bool> wanted)
    {
        while (_at < _text.Length && wanted(_text[_at]))
        {
            _at++;
        }
    }

    private void Add(TokenKind kind, int start, string? text = null, decimal number = 0)
    {
        SourceSpan span = _source.At(start, _at - start);
        _tokens.Add(new Token(kind, text ?? span.Text.ToString(), number, span));
    }
}
