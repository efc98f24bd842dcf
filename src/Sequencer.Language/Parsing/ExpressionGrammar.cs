using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>
/// Conditions and amounts. One rule serves both, since <c>(</c> may begin either: which it is, is settled
/// by the binder, and so no alternative is ever tried twice. Only brackets recurse.
/// </summary>
internal static class ExpressionGrammar
{
    private static readonly Parser<WordSyntax> Aspect = OneOf(null, "commanded", "proved", "failed", "open", "closed", "running", "stopped", "latched", "usable", "dosed", "overridden", "granted", "taken", "started");

    /// <summary>What is asked of a name of another unit.</summary>
    private static readonly Parser<WordSyntax> AspectElsewhere = OneOf(null, "commanded", "proved", "failed", "open", "closed", "running", "stopped", "latched", "usable", "granted", "taken");

    private static readonly Parser<WordSyntax> State = OneOf("a state such as `Held`", Enum.GetNames<ProceduralState>());

    /// <summary>What follows a name: its total, a name of the unit it names, what is asked of it.</summary>
    private static readonly Parser<Func<WordSyntax, ExpressionSyntax>> Tail =
        Symbol(".", null).Then(_ => Keyword("total").Select(_ => Total).Or(Below))
            .XOr(Keyword("at step", null).Then(_ => WholeNumber).Select(step =>
                (Func<WordSyntax, ExpressionSyntax>)(unit => new StepExpression(unit, step, unit.Span))))
            .XOr(Keyword("is", null).Then(_ => State).Select(state =>
                (Func<WordSyntax, ExpressionSyntax>)(unit => new StateExpression(unit, state, unit.Span))))
            .XOr(Keyword("answered", null).Then(word => QuotedText.XOptional()).Select(answer =>
                (Func<WordSyntax, ExpressionSyntax>)(prompt => new AnsweredExpression(prompt, answer.OrNull(), prompt.Span))))
            .XOr(Aspect.Select(Asked));

    private static readonly Parser<ExpressionSyntax> Named = Node(
        from name in Match(token => token.Kind == TokenKind.Word && !token.IsKeyword, "a name, a number or `(`", [])
            .Select(token => new WordSyntax(token.Text, token.Span))
        from tail in Tail.XOptional()
        select tail.IsDefined ? tail.Get()(name) : new NameExpression(name, null, name.Span));

    private static readonly Parser<ExpressionSyntax> AtStep = Node(
        from words in Keyword("at step", null)
        from step in WholeNumber
        select (ExpressionSyntax)new StepExpression(null, step, words.Span));

    private static readonly Parser<ExpressionSyntax> UnitIs = Node(
        from words in Keyword("unit is", null)
        from state in State
        select (ExpressionSyntax)new StateExpression(null, state, words.Span));

    private static readonly Parser<ExpressionSyntax> Bracketed = Node(
        from open in Symbol("(", null)
        from inner in Condition
        from close in Symbol(")")
        select (ExpressionSyntax)new BracketExpression(inner, inner.Span));

    private static readonly Parser<ExpressionSyntax> Term = Named.XOr(Literal).XOr(Bracketed).XOr(AtStep).XOr(UnitIs);

    private static readonly Parser<ExpressionSyntax> Sum =
        from first in Term
        from rest in Symbol("+", null).XOr(Symbol("-", null)).Then(sign => Term.Select(term => (sign, term))).Repeated()
        select rest.Aggregate(first, (left, next) => new SumExpression(left, next.sign.Text == "-", next.term, left.Span.Cover(next.term.Span)));

    private static readonly Parser<Func<ExpressionSyntax, ExpressionSyntax>> Compared =
        from sign in Match(token => Comparison(token) is not null, "a comparison such as `>= 4.5 m3`", [])
        from right in Sum
        select (Func<ExpressionSyntax, ExpressionSyntax>)(left =>
            new CompareExpression(left, Comparison(sign) ?? throw new InvalidOperationException("the sign was matched"), right, left.Span.Cover(right.Span)));

    /// <summary>Tried, not committed to: in <c>after A B within 2 s</c> the word belongs to the requirement.</summary>
    private static readonly Parser<Func<ExpressionSyntax, ExpressionSyntax>> Within =
        from word in OneOf(null, "within")
        from lower in Sum
        from dots in Symbol("..")
        from upper in Sum
        select (Func<ExpressionSyntax, ExpressionSyntax>)(value => new WithinExpression(value, lower, upper, value.Span.Cover(upper.Span)));

    private static readonly Parser<ExpressionSyntax> Fact =
        from left in Sum
        from tail in Compared.Or(Within).Optional()
        select tail.IsDefined ? tail.Get()(left) : left;

    private static readonly Parser<ExpressionSyntax> Factor =
        from prefixes in OneOf(null, "not", "rising", "falling").Repeated()
        from fact in Fact
        select prefixes.Reverse().Aggregate(fact, Prefixed);

    private static readonly Parser<ExpressionSyntax> Conjunction = Joined(Factor, "and", true);

    private static readonly Parser<ExpressionSyntax> Disjunction = Joined(Conjunction, "or", false);

    private static readonly Parser<ExpressionSyntax> Whole =
        from inner in Disjunction
        from stays in (
            from word in OneOf(null, "stays")
            from time in Time
            from pulse in Keyword("after the last pulse").XOptional()
            select (time, pulse)).XOptional()
        select stays.IsDefined
            ? new StaysExpression(inner, stays.Get().time, stays.Get().pulse.IsDefined, inner.Span.Cover((stays.Get().pulse.OrNull() ?? (SyntaxNode)stays.Get().time).Span))
            : inner;

    /// <summary>A condition or an amount of bounded height.</summary>
    public static Parser<ExpressionSyntax> Condition { get; } = Bounded(Whole);

    /// <summary>An amount of bounded height.</summary>
    public static Parser<ExpressionSyntax> Amount { get; } = Bounded(Sum);

    /// <summary>A name of another unit, and what is asked of it.</summary>
    private static Parser<Func<WordSyntax, ExpressionSyntax>> Below =>
        from name in Name
        from total in Symbol(".", null).Then(_ => Keyword("total")).XOptional()
        from aspect in AspectElsewhere.XOptional()
        select (Func<WordSyntax, ExpressionSyntax>)(unit =>
            (total.IsDefined ? Total : Asked(aspect.OrNull()))(Qualified(unit, name)));

    private static Func<WordSyntax, ExpressionSyntax> Total => name => new TotalExpression(name, name.Span);

    private static Func<WordSyntax, ExpressionSyntax> Asked(WordSyntax? aspect) => name => new NameExpression(name, aspect, name.Span);

    private static Parser<ExpressionSyntax> Joined(Parser<ExpressionSyntax> part, string word, bool all) =>
        from first in part
        from rest in Unless("reset", OneOf($"`{word}`", word)).Then(_ => part).Repeated()
        select Join(first, [first, .. rest], all);

    /// <summary>The words <c>and reset</c> end an interlock; the <c>and</c> joins nothing.</summary>
    private static Parser<WordSyntax> Unless(string next, Parser<WordSyntax> parser) => input =>
    {
        IResult<WordSyntax> result = parser(input);
        return result.WasSuccessful && !result.Remainder.AtEnd && ((TokenInput)result.Remainder).Token.Text == next
            ? Result.Failure<WordSyntax>(input, string.Empty, [])
            : result;
    };

    private static ExpressionSyntax Join(ExpressionSyntax first, ImmutableArray<ExpressionSyntax> parts, bool all) =>
        parts.Length == 1 ? first : new JunctionExpression(all, parts, first.Span.Cover(parts[^1].Span));

    private static ExpressionSyntax Prefixed(ExpressionSyntax inner, WordSyntax prefix) => prefix.Text == "not"
        ? new NotExpression(inner, prefix.Span.Cover(inner.Span))
        : new EdgeExpression(prefix.Text == "rising", inner, prefix.Span.Cover(inner.Span));

    private static Comparison? Comparison(Token token) => token.Text switch
    {
        "<" => Programs.Comparison.Less,
        "<=" => Programs.Comparison.LessOrEqual,
        ">" => Programs.Comparison.Greater,
        ">=" => Programs.Comparison.GreaterOrEqual,
        _ => null,
    };

    private static Parser<ExpressionSyntax> Bounded(Parser<ExpressionSyntax> parser) => input =>
    {
        IResult<ExpressionSyntax> result = parser(input);
        if (result.WasSuccessful && result.Value.Depth > ProgramLimits.ExpressionDepth)
        {
            ((TokenInput)input).TokenLine.Reject(new LineFault(result.Value.Span, ParseDiagnostics.ExpressionTooDeep));
            return Result.Failure<ExpressionSyntax>(input, string.Empty, []);
        }

        return result;
    };
}
