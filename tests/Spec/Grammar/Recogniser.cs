using System.Globalization;
using System.Text.RegularExpressions;

namespace Sequencer.Spec.Tests.Grammar;

/// <summary>Whether a list of tokens is a sentence of a production: every way of reading it is followed, remembered by place.</summary>
internal sealed partial class Recogniser
{
    private readonly LanguageGrammar _grammar;
    private readonly IReadOnlyList<string> _tokens;
    private readonly System.Collections.Immutable.ImmutableHashSet<string> _keywords;
    private readonly Dictionary<(GrammarNode Node, int Place), int[]> _known = new(new ByReference());

    private Recogniser(LanguageGrammar grammar, IReadOnlyList<string> tokens)
    {
        _grammar = grammar;
        _tokens = tokens;
        _keywords = grammar.Keywords;
    }

    public static bool Accepts(LanguageGrammar grammar, string production, IReadOnlyList<string> tokens) =>
        Unread(grammar, production, tokens) is null;

    /// <summary>From the furthest token that any reading came to; null where the whole is a sentence.</summary>
    public static string? Unread(LanguageGrammar grammar, string production, IReadOnlyList<string> tokens)
    {
        Recogniser recogniser = new(grammar, tokens);
        return recogniser.Ends(new GrammarNode.Reference(production), 0).Contains(tokens.Count)
            ? null
            : string.Join(' ', tokens.Skip(recogniser._known.Keys.Max(key => key.Place)).Take(20));
    }

    /// <summary>The tokens of a text without its comments.</summary>
    public static IReadOnlyList<string> Tokens(string text) => [.. Token().Matches(Remark().Replace(text, "")).Select(match => match.Value)];

    private int[] Ends(GrammarNode node, int place)
    {
        if (!_known.TryGetValue((node, place), out int[]? ends))
        {
            ends = [.. Find(node, place).Distinct()];
            _known[(node, place)] = ends;
        }

        return ends;
    }

    private IEnumerable<int> Find(GrammarNode node, int place) => node switch
    {
        GrammarNode.Terminal terminal => terminal.Words.Select((word, index) => place + index < _tokens.Count && _tokens[place + index] == word).All(same => same)
            ? [place + terminal.Words.Length]
            : [],
        GrammarNode.Reference reference => _grammar.Productions.TryGetValue(reference.Name, out GrammarNode? production)
            ? Ends(production, place)
            : place < _tokens.Count && IsOf(reference.Name, _tokens[place]) ? [place + 1] : [],
        GrammarNode.Sequence sequence => sequence.Parts.Aggregate(
            (IEnumerable<int>)[place], (places, part) => [.. places.SelectMany(from => Ends(part, from)).Distinct()]),
        GrammarNode.Choice choice => choice.Ways.SelectMany(way => Ends(way, place)),
        GrammarNode.Maybe maybe => [place, .. Ends(maybe.Inner, place)],
        GrammarNode.Repeated repeated => Closure(repeated.Inner, place),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private HashSet<int> Closure(GrammarNode inner, int place)
    {
        HashSet<int> all = [place];
        Queue<int> open = new([place]);
        while (open.TryDequeue(out int from))
        {
            foreach (int end in Ends(inner, from).Where(end => all.Add(end)))
            {
                open.Enqueue(end);
            }
        }

        return all;
    }

    private bool IsOf(string kind, string token) => kind switch
    {
        "name" => char.IsAsciiLetter(token[0]) && !_keywords.Contains(token),
        "measure" => (char.IsAsciiLetter(token[0]) && !_keywords.Contains(token)) || token == "%",
        "text" => token[0] == '"',
        "number" => char.IsAsciiDigit(token[0]),
        "integer" => char.IsAsciiDigit(token[0]) && !token.Contains('.', StringComparison.Ordinal),
        "vote" => Vote().IsMatch(token),
        "address" => token[0] == '%' && token.Length > 1,
        _ => throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"nothing says what a {kind} is")),
    };

    [GeneratedRegex("""
        "[^"]*"|%[A-Z]+[\d.]+|de-energised|[A-Za-z][\w/]*|\.[a-z]+|\d+oo\d+|\d+(\.\d+)?|\.\.|<=|>=|\S
        """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Token();

    [GeneratedRegex(@"^\d+oo\d+$")]
    private static partial Regex Vote();

    [GeneratedRegex("--.*")]
    private static partial Regex Remark();

    private sealed class ByReference : IEqualityComparer<(GrammarNode Node, int Place)>
    {
        public bool Equals((GrammarNode Node, int Place) x, (GrammarNode Node, int Place) y) => ReferenceEquals(x.Node, y.Node) && x.Place == y.Place;

        public int GetHashCode((GrammarNode Node, int Place) obj) =>
            HashCode.Combine(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(obj.Node), obj.Place);
    }
}
