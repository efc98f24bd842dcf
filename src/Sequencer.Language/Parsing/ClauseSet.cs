using System.Collections.Immutable;
using Sequencer.Language.Syntax;
using Sequencer.Text;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>The optional parts of a statement: in any order, each at most once, with or without commas between.</summary>
internal sealed class ClauseSet
{
    private readonly ImmutableArray<Clause> _clauses;

    private ClauseSet(ImmutableArray<Clause> clauses) => _clauses = clauses;

    public T? Find<T>(string keyword)
        where T : class => _clauses.FirstOrDefault(clause => clause.Keyword == keyword)?.Value as T;

    public static Parser<Clause> Clause<T>(string keyword, Parser<T> body)
        where T : SyntaxNode => Keyword(keyword).Then(word => body.Select(value => new Clause(keyword, value, word.Span)));

    public static Parser<ClauseSet> AnyOf(params Parser<Clause>[] alternatives) => AnyOfBefore(null, alternatives);

    /// <summary>As above, where the statement goes on with a word that may have a comma of its own before it.</summary>
    public static Parser<ClauseSet> AnyOfBefore(string? next, params Parser<Clause>[] alternatives)
    {
        Parser<Clause> any = alternatives.Aggregate((left, right) => left.XOr(right));
        Parser<Clause> separated = Placed(Symbol(",", null).XOptional().Then(_ => any));
        Parser<Clause> item = input => GoesOn((TokenInput)input, next) ? Result.Failure<Clause>(input, string.Empty, []) : separated(input);
        Parser<ImmutableArray<Clause>> all = item.Repeated();
        return input =>
        {
            IResult<ImmutableArray<Clause>> result = all(input);
            if (!result.WasSuccessful)
            {
                return Result.Failure<ClauseSet>(result.Remainder, string.Empty, []);
            }

            Clause? repeated = result.Value.Where((clause, index) => result.Value.Take(index).Any(before => before.Keyword == clause.Keyword)).FirstOrDefault();
            if (repeated is not null)
            {
                TokenLine line = ((TokenInput)input).TokenLine;
                Clause first = result.Value.First(clause => clause.Keyword == repeated.Keyword);
                bool saysTheSame = Words(line, first) == Words(line, repeated);
                line.Reject(new LineFault(repeated.Span, at => ParseDiagnostics.ClauseTwice(at, repeated.Keyword) with
                {
                    Fix = saysTheSame ? Fix.Delete(new SourceSpan(at.Source, repeated.Whole.Shift(at.Span.Start - repeated.Span.Start)), $"delete the second `{Words(line, repeated)}`") : null,
                }));
            }

            return Result.Success(new ClauseSet(result.Value), result.Remainder);
        };
    }

    /// <summary>Gives a clause the stretch from the end of the token before it.</summary>
    private static Parser<Clause> Placed(Parser<Clause> parser) => input =>
    {
        IResult<Clause> result = parser(input);
        TokenLine line = ((TokenInput)input).TokenLine;
        return result.WasSuccessful
            ? Result.Success(result.Value with { Whole = TextSpan.Between(line.Span(0, input.Position).End, line.Span(0, result.Remainder.Position).End) }, result.Remainder)
            : result;
    };

    private static string Words(TokenLine line, Clause clause) => line.Text[clause.Span.Start..clause.Whole.End];

    private static bool GoesOn(TokenInput at, string? next) =>
        at.Position + 1 < at.TokenLine.Tokens.Length
        && at.TokenLine.Tokens[at.Position] is { Kind: TokenKind.Symbol, Text: "," }
        && at.TokenLine.Tokens[at.Position + 1] is { Kind: TokenKind.Word } word && word.Text == next;
}
