using System.Text.RegularExpressions;

namespace Sequencer.Testing.Pascal;

/// <summary>The tokens of a structured text, taken one after the other. Written for the judge alone: it shares nothing with the reader that is judged.</summary>
internal sealed partial class TextTokens
{
    private readonly List<TextToken> _tokens = [];
    private int _next;

    public TextTokens(string text)
    {
        int line = 1;
        int end = 0;
        foreach (Match match in Piece().Matches(text))
        {
            if (match.Index != end)
            {
                throw new InvalidOperationException($"`{text[end]}` in line {line} begins nothing that is known");
            }

            end = match.Index + match.Length;
            TextTokenKind? kind = match.Groups["name"].Success ? TextTokenKind.Name
                : match.Groups["number"].Success ? TextTokenKind.Number
                : match.Groups["duration"].Success ? TextTokenKind.Duration
                : match.Groups["address"].Success ? TextTokenKind.Address
                : match.Groups["symbol"].Success ? TextTokenKind.Symbol
                : null;
            if (kind is { } known)
            {
                _tokens.Add(new TextToken(known, match.Value, line));
            }

            line += match.Value.Count(letter => letter == '\n');
        }

        _tokens.Add(new TextToken(TextTokenKind.End, "", line));
    }

    public TextToken Next => Ahead(0);

    public TextToken Ahead(int by) => _tokens[Math.Min(_next + by, _tokens.Count - 1)];

    public TextToken Take() => _tokens[Math.Min(_next++, _tokens.Count - 1)];

    public bool TakeIf(string word)
    {
        bool found = Next.Is(word);
        _next += found ? 1 : 0;
        return found;
    }

    public void Expect(string word)
    {
        if (!TakeIf(word))
        {
            throw new InvalidOperationException($"{word} is expected, not {Next}");
        }
    }

    public string Name() => Next.Kind == TextTokenKind.Name ? Take().Text : throw new InvalidOperationException($"a name is expected, not {Next}");

    [GeneratedRegex(
        """
        (?<space>\s+|\(\*.*?\*\)|/\*.*?\*/|//[^\n]*)
        |(?<duration>(?:T|TIME|LT|LTIME)\#[0-9][0-9_A-Z.]*)
        |(?<number>(?:[A-Z_]\w*\#[-+]?)?(?:16\#[0-9A-F_]+|8\#[0-7_]+|2\#[01_]+|[0-9][0-9_]*(?:\.[0-9][0-9_]*(?:E[-+]?[0-9]+)?)?))
        |(?<address>%[A-Z]+[0-9.]+)
        |(?<name>[A-Z_]\w*(?:\#[A-Z_]\w*)?)
        |(?<symbol>:=|=>|<=|>=|<>|\*\*|\.\.|[-+*/&=<>(),;:.\[\]])
        """,
        RegexOptions.IgnoreCase | RegexOptions.Singleline | RegexOptions.IgnorePatternWhitespace | RegexOptions.CultureInvariant)]
    private static partial Regex Piece();
}
