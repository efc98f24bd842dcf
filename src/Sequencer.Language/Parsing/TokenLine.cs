using System.Collections.Immutable;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>
/// The tokens of one line while it is parsed, and the furthest place any parser failed at: whatever
/// alternatives were tried, that is where the line broke.
/// </summary>
internal sealed class TokenLine
{
    private readonly List<Expectation> _expected = [];
    private int _furthest = -1;

    public TokenLine(string text, ImmutableArray<Token> tokens)
    {
        Text = text;
        Tokens = tokens;
    }

    public string Text { get; }

    public ImmutableArray<Token> Tokens { get; }

    /// <summary>A mistake that the grammar recognises as such; wins over the furthest failure.</summary>
    public LineFault? Fault { get; private set; }

    public void Expected(int position, Expectation expectation)
    {
        if (position > _furthest)
        {
            _furthest = position;
            _expected.Clear();
        }

        if (position == _furthest && !_expected.Contains(expectation))
        {
            _expected.Add(expectation);
        }
    }

    public void Reject(LineFault fault) => Fault ??= fault;

    /// <summary>From the first token at <paramref name="from"/> to the last before <paramref name="to"/>.</summary>
    public TextSpan Span(int from, int to) =>
        from < to ? Tokens[from].Span.Cover(Tokens[to - 1].Span) : new TextSpan(from < Tokens.Length ? Tokens[from].Span.Start : Text.Length, 0);

    /// <summary>The fault at the furthest place, told with what was expected there.</summary>
    public LineFault FurthestFault()
    {
        if (Fault is not null)
        {
            return Fault;
        }

        Token? found = _furthest < Tokens.Length ? Tokens[_furthest] : null;
        ImmutableArray<string> descriptions = [.. _expected.Select(item => item.Description).OfType<string>().Distinct(StringComparer.Ordinal)];
        string[] words = [.. _expected.SelectMany(item => item.Words)];
        string? near = found is { Kind: TokenKind.Word } word ? NearestWord.Find(word.Text, words) : null;
        string? only = found is { Kind: TokenKind.Word } written ? NearestWord.Only(written.Text, words) : null;
        TextSpan span = found?.Span ?? new TextSpan(Text.Length, 0);
        return new LineFault(span, at => ParseDiagnostics.Expected(at, descriptions, found, near, StatementForms.Of(Tokens)) with { Fix = Fix.Replace(at, only) });
    }
}
