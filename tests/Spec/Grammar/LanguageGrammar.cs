using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Testing;

namespace Sequencer.Spec.Tests.Grammar;

/// <summary>The productions of the blocks in <c>spec/language.md</c>.</summary>
internal sealed partial class LanguageGrammar
{
    private readonly string[] _tokens;
    private int _place;

    private LanguageGrammar(string text)
    {
        _tokens = [.. Piece().Matches(Comment().Replace(text, " ")).Select(match => match.Value)];
        Dictionary<string, GrammarNode> productions = new(StringComparer.Ordinal);
        while (_place < _tokens.Length)
        {
            string name = Next();
            Expect("=");
            productions.Add(name, Choice());
            Expect(";");
        }

        Productions = productions.ToImmutableDictionary(StringComparer.Ordinal);
    }

    private LanguageGrammar(LanguageGrammar other)
    {
        _tokens = other._tokens;
        Productions = other.Productions;
    }

    public static LanguageGrammar OfTheSpecification { get; } = new(string.Concat(
        Documents.Blocks.Where(block => block.Path == "spec/language.md" && block.Tag == "text").Select(block => block.Text)));

    public ImmutableDictionary<string, GrammarNode> Productions { get; private init; }

    /// <summary>
    /// The grammar without the line between amounts and conditions: the parser leaves that to the binding, which knows what a
    /// name stands for.
    /// </summary>
    public LanguageGrammar WithoutKinds() => new(this)
    {
        Productions = Productions
            .SetItem("measured", new GrammarNode.Choice([Productions["measured"], new GrammarNode.Reference("sum")]))
            .SetItem("amount", new GrammarNode.Choice(
            [
                Productions["amount"],
                new GrammarNode.Reference("fact"),
                new GrammarNode.Sequence([new GrammarNode.Terminal(["("]), new GrammarNode.Reference("condition"), new GrammarNode.Terminal([")"])]),
            ])),
    };

    /// <summary>Every word that stands in a terminal and is no name, but for those that the text leaves free.</summary>
    public ImmutableHashSet<string> Keywords => _tokens.Where(token => token[0] == '"').SelectMany(token => token[1..^1].Split(' '))
        .ToImmutableHashSet().Except(FreeWords);

    private static ImmutableHashSet<string> FreeWords { get; } =
        [.. Quoted().Matches(FreeWordsOfTheText().Match(File.ReadAllText(RepositoryPath.At("spec", "language.md"))).Groups[1].Value).Select(match => match.Groups[1].Value)];

    [GeneratedRegex("The words (.*?) mean something only where they are asked for", RegexOptions.Singleline)]
    private static partial Regex FreeWordsOfTheText();

    [GeneratedRegex("`([a-z]+)`")]
    private static partial Regex Quoted();

    private GrammarNode Choice()
    {
        List<GrammarNode> ways = [Sequence()];
        while (_tokens[_place] == "|")
        {
            _place++;
            ways.Add(Sequence());
        }

        return ways.Count == 1 ? ways[0] : new GrammarNode.Choice([.. ways]);
    }

    private GrammarNode Sequence()
    {
        List<GrammarNode> parts = [];
        while (_tokens[_place] is not ("|" or ";" or ")" or "]" or "}"))
        {
            if (_tokens[_place] == ",")
            {
                _place++;
                continue;
            }

            parts.Add(Primary());
        }

        return parts.Count == 1 ? parts[0] : new GrammarNode.Sequence([.. parts]);
    }

    private GrammarNode Primary()
    {
        string token = Next();
        switch (token)
        {
            case "(":
                GrammarNode group = Choice();
                Expect(")");
                return group;
            case "[":
                GrammarNode maybe = Choice();
                Expect("]");
                return new GrammarNode.Maybe(maybe);
            case "{":
                GrammarNode repeated = Choice();
                Expect("}");
                return new GrammarNode.Repeated(repeated);
            default:
                return token[0] == '"' ? new GrammarNode.Terminal([.. token[1..^1].Split(' ')]) : new GrammarNode.Reference(token);
        }
    }

    private string Next() => _tokens[_place++];

    private void Expect(string token) => Assert.Equal(token, Next());

    [GeneratedRegex("""\(\*.*?\*\)""", RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex("""
        "[^"]*"|[a-z][a-z-]*|[=|;,()\[\]{}]
        """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Piece();
}
