using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;
using Sprache;

namespace Sequencer.Language.Parsing;

/// <summary>The grammar's smallest parsers: one token each, which says what it expected when it fails.</summary>
internal static class Terminals
{
    private const string AnyUnit = "a unit such as `m3`";
    private static readonly ImmutableArray<string> NoWords = [];

    /// <summary>A name that the author chose.</summary>
    public static readonly Parser<WordSyntax> Name = Match(token => token.Kind == TokenKind.Word && !token.IsKeyword, "a name", NoWords).Select(ToWord);

    /// <summary>A name, of another unit where that stands before a point.</summary>
    public static readonly Parser<WordSyntax> NameAnywhere =
        from first in Name
        from second in Symbol(".", null).Then(_ => Name).Optional()
        select second.IsDefined ? Qualified(first, second.Get()) : first;

    public static readonly Parser<WordSyntax> UnitName = Unit(AnyUnit);

    public static readonly Parser<WordSyntax> Vote = Match(token => token.Kind == TokenKind.Vote, "a vote such as `2oo3`", NoWords).Select(ToWord);

    public static readonly Parser<WordSyntax> Address = Match(token => token.Kind == TokenKind.Address, "an address such as `%IX0.3`", NoWords).Select(ToWord);

    public static readonly Parser<TextSyntax> QuotedText = Match(token => token.Kind == TokenKind.Text, "a text in double quotes", NoWords)
        .Select(token => new TextSyntax(token.Text[1..^1], token.Span));

    public static readonly Parser<NumberSyntax> SignedNumber = Number("a number");

    public static readonly Parser<NumberSyntax> WholeNumber = Match(token => token.Kind == TokenKind.Number && !token.Text.Contains('.', StringComparison.Ordinal), "a whole number", NoWords)
        .Select(token => ToNumber(token, false, token.Span));

    public static readonly Parser<AmountSyntax> Time = Amount("a time such as `20 s`", "a unit of time such as `min`");

    public static readonly Parser<AmountSyntax> AmountWithUnit = Amount("an amount with its unit such as `4.5 m3`", AnyUnit);

    /// <summary>A number whose unit may be left out, as a term of a sum.</summary>
    public static readonly Parser<ExpressionSyntax> Literal = Node(
        from number in Number(null)
        from unit in Unit(null).XOptional()
        select (ExpressionSyntax)new AmountSyntax(number, unit.OrNull(), number.Span));

    /// <summary>Never matches, and expects nothing: stands for a clause that its place does not allow.</summary>
    public static Parser<T> Nothing<T>() => input => Result.Failure<T>(input, string.Empty, []);

    /// <summary>Nothing follows.</summary>
    public static readonly Parser<bool> LineEnd = input =>
    {
        TokenInput at = (TokenInput)input;
        if (at.AtEnd)
        {
            return Result.Success(true, at);
        }

        at.TokenLine.Expected(at.Position, new Expectation("the end of the line", NoWords));
        return Result.Failure<bool>(at, string.Empty, []);
    };

    /// <summary>One keyword, or several that always stand together (<c>bad after</c>).</summary>
    public static Parser<WordSyntax> Keyword(string words) => Keyword(words, $"`{words}`");

    public static Parser<WordSyntax> Keyword(string words, string? description)
    {
        string[] parts = words.Split(' ');
        Parser<WordSyntax> parser = OneOf(description, parts[0]);
        foreach (string part in parts.Skip(1))
        {
            Parser<WordSyntax> next = OneOf($"`{part}`", part);
            parser = parser.Then(first => next.Select(last => new WordSyntax(first.Text + " " + last.Text, first.Span.Cover(last.Span))));
        }

        return parser;
    }

    /// <summary>Any of the keywords; <paramref name="description"/> is null where naming it would only lengthen messages.</summary>
    public static Parser<WordSyntax> OneOf(string? description, params string[] words)
    {
        ImmutableArray<string> all = [.. words];
        return Match(token => token.Kind == TokenKind.Word && all.Contains(token.Text), description, all).Select(ToWord);
    }

    public static Parser<Token> Symbol(string sign, string? description) =>
        Match(token => token.Kind == TokenKind.Symbol && token.Text == sign, description, NoWords);

    public static Parser<Token> Symbol(string sign) => Symbol(sign, $"`{sign}`");

    public static Parser<Token> Match(Func<Token, bool> test, string? description, ImmutableArray<string> words)
    {
        Expectation expectation = new(description, words);
        return input =>
        {
            TokenInput at = (TokenInput)input;
            if (!at.AtEnd && test(at.Token))
            {
                return Result.Success(at.Token, at.Advance());
            }

            at.TokenLine.Expected(at.Position, expectation);
            return Result.Failure<Token>(at, string.Empty, []);
        };
    }

    /// <summary>Gives the node that was built the span of the tokens that made it.</summary>
    public static Parser<T> Node<T>(Parser<T> parser)
        where T : SyntaxNode => input =>
    {
        IResult<T> result = parser(input);
        if (!result.WasSuccessful)
        {
            return result;
        }

        SyntaxNode node = result.Value;
        TextSpan span = ((TokenInput)input).TokenLine.Span(input.Position, result.Remainder.Position);
        return Result.Success((T)(node with { Span = span }), result.Remainder);
    };

    /// <summary>
    /// As many as there are; one that breaks off half-way fails the whole. (Sprache's own XMany runs the
    /// failing one a second time, which costs 2 to the power of the depth in nested brackets.)
    /// </summary>
    public static Parser<ImmutableArray<T>> Repeated<T>(this Parser<T> parser) => input =>
    {
        ImmutableArray<T>.Builder items = ImmutableArray.CreateBuilder<T>();
        IInput at = input;
        IResult<T> result = parser(at);
        while (result.WasSuccessful)
        {
            items.Add(result.Value);
            at = result.Remainder;
            result = parser(at);
        }

        return result.Remainder.Position == at.Position
            ? Result.Success(items.ToImmutable(), at)
            : Result.Failure<ImmutableArray<T>>(result.Remainder, string.Empty, []);
    };

    /// <summary>One or more, with commas or another separator between them.</summary>
    public static Parser<ImmutableArray<T>> SeparatedBy<T, TSeparator>(this Parser<T> parser, Parser<TSeparator> separator) =>
        from first in parser
        from rest in separator.Then(_ => parser).Repeated()
        select rest.Insert(0, first);

    public static T? OrNull<T>(this IOption<T> option)
        where T : class => option.IsDefined ? option.Get() : null;

    private static Parser<AmountSyntax> Amount(string description, string unitDescription) => Node(
        from number in Number(description)
        from unit in Unit(unitDescription)
        select new AmountSyntax(number, unit, number.Span));

    private static Parser<WordSyntax> Unit(string? description) =>
        Match(token => token.Kind == TokenKind.Word && !token.IsKeyword, description, NoWords).Select(ToWord);

    private static Parser<NumberSyntax> Number(string? description)
    {
        Parser<Token> digits = Match(token => token.Kind == TokenKind.Number, description, NoWords);
        return
            from minus in Symbol("-", null).XOptional()
            from token in digits
            select ToNumber(token, minus.IsDefined, minus.IsDefined ? minus.Get().Span.Cover(token.Span) : token.Span);
    }

    public static WordSyntax Qualified(WordSyntax unit, WordSyntax name) =>
        new(Programs.QualifiedName.Of(unit.Text, name.Text), unit.Span.Cover(name.Span));

    private static WordSyntax ToWord(Token token) => new(token.Text, token.Span);

    private static NumberSyntax ToNumber(Token token, bool negative, TextSpan span)
    {
        int point = token.Text.IndexOf('.', StringComparison.Ordinal);
        int decimals = point < 0 ? 0 : token.Text.Length - point - 1;
        BigInteger digits = BigInteger.Parse(token.Text.Replace(".", string.Empty, StringComparison.Ordinal), NumberStyles.None, CultureInfo.InvariantCulture);
        return new NumberSyntax(new Rational(negative ? -digits : digits, BigInteger.Pow(10, decimals)), decimals, span);
    }
}
