using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Parsing;

/// <summary>
/// The tokens of a file with a place in them. After a mistake it is lost: nothing more is reported or taken
/// until <see cref="Recover"/> finds the end of the statement, so that one mistake makes one message.
/// </summary>
internal sealed class TokenReader
{
    /// <summary>How deep statements and brackets may nest: recursion of the parser and of every later walk.</summary>
    public const int DeepestNesting = 100;

    private readonly ImmutableArray<Token> _tokens;
    private readonly DiagnosticBag _diagnostics;
    private int _at;
    private int _depth;
    private bool _isGivenUp;

    public TokenReader(ImmutableArray<Token> tokens, DiagnosticBag diagnostics)
    {
        _tokens = tokens;
        _diagnostics = diagnostics;
    }

    public Token Current => _tokens[_at];

    public Token Next => Ahead(1);

    public Token Ahead(int places) => _tokens[Math.Min(_at + places, _tokens.Length - 1)];

    public bool AtEnd => Current.Kind == TokenKind.End;

    public bool IsLost { get; private set; }

    public bool At(string keywordOrSymbol) => Current.Is(keywordOrSymbol);

    public bool AtAny(ReadOnlySpan<string> keywordsOrSymbols)
    {
        foreach (string word in keywordsOrSymbols)
        {
            if (At(word))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether anything was passed over so far: what then looks out of place may only look so.</summary>
    public bool HasRecovered { get; private set; }

    public Token Take()
    {
        Token token = Current;
        if (!AtEnd)
        {
            _at++;
        }

        return token;
    }

    public bool TryTake(string keywordOrSymbol)
    {
        if (IsLost || !At(keywordOrSymbol))
        {
            return false;
        }

        Take();
        return true;
    }

    public void Expect(string keywordOrSymbol)
    {
        if (!TryTake(keywordOrSymbol))
        {
            Lose($"`{keywordOrSymbol}`");
        }
    }

    /// <summary>Takes the word; where it is not here, reports that and looks for it up to the end of the statement.</summary>
    public void ExpectOrFind(string keywordOrSymbol, ReadOnlySpan<string> stops)
    {
        if (TryTake(keywordOrSymbol))
        {
            return;
        }

        Lose($"`{keywordOrSymbol}`");
        while (!AtEnd && !At(keywordOrSymbol) && !AtAny(stops) && !At(";"))
        {
            Take();
        }

        if (At(keywordOrSymbol))
        {
            IsLost = false;
            HasRecovered = true;
            Take();
        }
    }

    /// <summary>Reports what was expected here, unless lost already.</summary>
    public void Lose(string expected) =>
        Lose(StructuredTextDiagnostics.Expected(Current.Span, expected, Current.Shown));

    public void Lose(Diagnostic diagnostic)
    {
        if (!IsLost && !_isGivenUp)
        {
            _diagnostics.Add(diagnostic);
        }

        IsLost = true;
    }

    public void Report(Diagnostic diagnostic) => _diagnostics.Add(diagnostic);

    /// <summary>Where lost, passes over everything up to one of the words, which stays, or past a <c>;</c>.</summary>
    public void Recover(ReadOnlySpan<string> stops)
    {
        if (!IsLost)
        {
            return;
        }

        HasRecovered = true;
        while (!AtEnd && !AtAny(stops) && !At(";"))
        {
            Take();
        }

        IsLost = false;
        TryTake(";");
    }

    /// <summary>
    /// Goes one level deeper; false, with the rest of the file given up, where that is too deep. Each call
    /// that answers true is paired with <see cref="Leave"/>.
    /// </summary>
    public bool Enter()
    {
        if (_depth < DeepestNesting)
        {
            _depth++;
            return true;
        }

        Lose(StructuredTextDiagnostics.NestedTooDeep(Current.Span, DeepestNesting));
        _at = _tokens.Length - 1;
        _isGivenUp = true;
        return false;
    }

    public void Leave() => _depth--;

    public SourceSpan Since(SourceSpan start)
    {
        SourceSpan last = _tokens[Math.Max(0, _at - 1)].Span;
        return last.Span.End < start.Span.Start ? start : start.Cover(last);
    }
}
