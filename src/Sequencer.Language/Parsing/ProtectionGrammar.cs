using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>Votes, groups, latches, interlocks, permissives, trips, overrides and alarms.</summary>
internal static class ProtectionGrammar
{
    public static readonly Parser<WordSyntax> Reaction =
        OneOf("a reaction (`alarm`, `hold`, `stop`, `abort` or `emergency`)", "alarm", "hold", "stop", "abort", "emergency");

    private static readonly Parser<ImmutableArray<WordSyntax>> Names = NameAnywhere.SeparatedBy(Symbol(",", null));

    /// <summary>A comma goes on with a member unless a clause begins behind it.</summary>
    private static readonly Parser<ImmutableArray<ExpressionSyntax>> MemberList =
        from first in ExpressionGrammar.Condition
        from rest in ((Parser<ExpressionSyntax>)(input => BeginsClause((TokenInput)input)
            ? Result.Failure<ExpressionSyntax>(input, string.Empty, [])
            : Symbol(",", null).Then(_ => ExpressionGrammar.Condition)(input))).Repeated()
        select rest.Insert(0, first);

    private static readonly Parser<Clause>[] DelayClauses = [ClauseSet.Clause("on after", Time), ClauseSet.Clause("off after", Time)];

    private static readonly Parser<DelaysSyntax> Delays = ClauseSet.AnyOfBefore("then", DelayClauses).Select(DelaysOf);

    public static readonly Parser<StatementSyntax> Voted =
        from word in Keyword("voted")
        from name in Name
        from title in QuotedText
        from vote in Terminals.Vote
        from of in Keyword("of")
        from members in MemberList
        from clauses in ClauseSet.AnyOf(
            ClauseSet.Clause("if bad", OneOf("`demand` or `fewer votes`", "demand").XOr(Keyword("fewer votes"))),
            ClauseSet.Clause("differ for", Time))
        select new VotedSyntax(name, title, vote, members, clauses.Find<WordSyntax>("if bad"), clauses.Find<AmountSyntax>("differ for"), name.Span);

    public static readonly Parser<StatementSyntax> Group =
        from word in Keyword("group")
        from name in Name
        from title in QuotedText
        select new GroupSyntax(name, title, name.Span);

    public static readonly Parser<StatementSyntax> Latch =
        from word in Keyword("latch")
        from name in Name
        from description in QuotedText
        from set in Keyword("set when").Then(_ => ExpressionGrammar.Condition)
        from comma in Symbol(",", null).XOptional()
        from clear in Keyword("clear when").Then(_ => ExpressionGrammar.Condition)
        from retained in Symbol(",", null).XOptional().Then(_ => Keyword("retained")).XOptional()
        select new LatchSyntax(name, description, set, clear, retained.IsDefined, name.Span);

    private static readonly Parser<CountSetSyntax> CountSet =
        from value in AmountWithUnit
        from condition in Keyword("when").Then(_ => ExpressionGrammar.Condition)
        select new CountSetSyntax(value, condition, value.Span);

    private static readonly Parser<CountWindowSyntax> CountWindow =
        from time in Time
        from parts in Keyword("in").Then(_ => WholeNumber)
        from word in OneOf("`parts`", "parts")
        select new CountWindowSyntax(time, parts, time.Span);

    public static readonly Parser<StatementSyntax> Count =
        from word in Keyword("count")
        from name in Name
        from description in QuotedText
        from low in SignedNumber
        from dots in Symbol("..")
        from high in SignedNumber
        from unit in UnitName
        from comma in Symbol(",", null).XOptional()
        from each in Keyword("each").Then(_ => ExpressionGrammar.Condition)
        from verb in OneOf("`adds` or `takes`", "adds", "takes")
        from amount in AmountWithUnit
        from clauses in ClauseSet.AnyOf(ClauseSet.Clause("set to", Node(CountSet)), ClauseSet.Clause("over", Node(CountWindow)))
        select new CountSyntax(
            name, description, low, high, unit, each, verb, amount, clauses.Find<CountSetSyntax>("set to"), clauses.Find<CountWindowSyntax>("over"), name.Span);

    public static readonly Parser<StatementSyntax> Fact =
        from word in Keyword("fact")
        from name in Name
        from description in QuotedText
        from when in Keyword("when").Then(_ => ExpressionGrammar.Condition)
        select new FactSyntax(name, description, when, name.Span);

    private static readonly Parser<(InterlockForm Form, ExpressionSyntax Condition, ExpressionSyntax? Release, bool Reset)> While =
        from word in Keyword("while")
        from condition in ExpressionGrammar.Condition
        select (InterlockForm.While, condition, (ExpressionSyntax?)null, false);

    private static readonly Parser<(InterlockForm Form, ExpressionSyntax Condition, ExpressionSyntax? Release, bool Reset)> Unless =
        from word in Keyword("unless")
        from condition in ExpressionGrammar.Condition
        select (InterlockForm.Unless, condition, (ExpressionSyntax?)null, false);

    private static readonly Parser<(InterlockForm Form, ExpressionSyntax Condition, ExpressionSyntax? Release, bool Reset)> FromUntil =
        from word in Keyword("from")
        from condition in ExpressionGrammar.Condition
        from until in Keyword("until")
        from release in ExpressionGrammar.Condition
        from reset in Keyword("and reset").XOptional()
        select (InterlockForm.FromUntil, condition, (ExpressionSyntax?)release, reset.IsDefined);

    private static readonly Parser<Func<WordSyntax, TextSyntax, ImmutableArray<WordSyntax>, StatementSyntax>> Blocked =
        from word in Keyword("blocked")
        from form in While.XOr(Unless).XOr(FromUntil)
        from clauses in ClauseSet.AnyOf([.. DelayClauses, ClauseSet.Clause("group", Name)])
        select (Func<WordSyntax, TextSyntax, ImmutableArray<WordSyntax>, StatementSyntax>)((name, title, outputs) => new InterlockSyntax(
            name, title, outputs, form.Form, form.Condition, form.Release, form.Reset, DelaysOf(clauses), clauses.Find<WordSyntax>("group"), name.Span));

    private static readonly Parser<Func<WordSyntax, TextSyntax, ImmutableArray<WordSyntax>, StatementSyntax>> Exclusive =
        from word in Keyword("exclusive")
        from between in Symbol(",", null).Then(_ => Time).Then(time => Keyword("between").Select(_ => time)).XOptional()
        select (Func<WordSyntax, TextSyntax, ImmutableArray<WordSyntax>, StatementSyntax>)((name, title, outputs) =>
            new ExclusionSyntax(name, title, outputs, between.OrNull(), name.Span));

    public static readonly Parser<StatementSyntax> Interlock =
        from word in Keyword("interlock")
        from name in Name
        from title in QuotedText
        from outputs in Names
        from build in Blocked.XOr(Exclusive)
        select build(name, title, outputs);

    public static readonly Parser<StatementSyntax> Pair =
        from word in Keyword("pair")
        from name in Name
        from title in QuotedText
        from first in Name
        from between in Symbol(",")
        from second in Name
        from comma in Symbol(",", null).XOptional()
        from duty in Keyword("duty").Then(_ => Name)
        from next in Symbol(",", null).XOptional()
        from within in Keyword("changes over within").Then(_ => Time)
        from last in Symbol(",", null).XOptional()
        from rotates in Keyword("rotates each batch").XOptional()
        select new PairSyntax(name, title, first, second, duty, within, rotates.IsDefined, name.Span);

    public static readonly Parser<StatementSyntax> Shared =
        from word in Keyword("shared")
        from name in Name
        from title in QuotedText
        from outputs in Name.SeparatedBy(Symbol(",", null)).XOptional()
        select new SharedSyntax(name, title, outputs.GetOrElse([]), name.Span);

    public static readonly Parser<StatementSyntax> Permissive =
        from word in Keyword("permissive")
        from name in Name
        from title in QuotedText
        from outputs in Names
        from starts in OneOf("`starts` or `start`", "starts", "start")
        from only in Keyword("only with")
        from condition in ExpressionGrammar.Condition
        from comma in Symbol(",", null).XOptional()
        from patience in (
            from after in Keyword("else after")
            from time in Time
            from reaction in Reaction
            select (time, reaction)).XOptional()
        select new PermissiveSyntax(
            name,
            title,
            outputs,
            condition,
            patience.IsDefined ? patience.Get().time : null,
            patience.IsDefined ? patience.Get().reaction : null,
            name.Span);

    public static readonly Parser<StatementSyntax> Trip =
        from word in Keyword("trip")
        from name in Name
        from title in QuotedText
        from condition in Keyword("when").Then(_ => ExpressionGrammar.Condition)
        from delays in Delays
        from comma in Symbol(",", null).XOptional()
        from reaction in Keyword("then").Then(_ => Reaction)
        from clauses in ClauseSet.AnyOf(
            ClauseSet.Clause("if bad", OneOf("`trip`, `alarm` or `hold`", "trip", "alarm", "hold")),
            ClauseSet.Clause("group", Name))
        select new TripSyntax(name, title, condition, delays, reaction, clauses.Find<WordSyntax>("if bad"), clauses.Find<WordSyntax>("group"), name.Span);

    private static readonly Parser<RespondSyntax> Response =
        from text in QuotedText
        from time in Keyword("within").Then(_ => Time)
        select new RespondSyntax(text, time, text.Span);

    public static readonly Parser<StatementSyntax> Alarm =
        from word in Keyword("alarm")
        from name in Name
        from message in QuotedText
        from condition in Keyword("when").Then(_ => ExpressionGrammar.Condition)
        from clauses in ClauseSet.AnyOf(
            [
                .. DelayClauses,
                ClauseSet.Clause("deadband", AmountWithUnit),
                ClauseSet.Clause("suppressed at step", Node(WholeNumber.SeparatedBy(Keyword("and", null)).Select(steps => new StepNumbersSyntax(steps, default)))),
                ClauseSet.Clause("priority", OneOf("`high`, `medium` or `low`", "high", "medium", "low")),
                ClauseSet.Clause("consequence", QuotedText),
                ClauseSet.Clause("response", Node(Response)),
            ])
        select new AlarmSyntax(
            name,
            message,
            condition,
            DelaysOf(clauses),
            clauses.Find<AmountSyntax>("deadband"),
            clauses.Find<StepNumbersSyntax>("suppressed at step"),
            clauses.Find<WordSyntax>("priority"),
            clauses.Find<TextSyntax>("consequence"),
            clauses.Find<RespondSyntax>("response"),
            name.Span);

    public static readonly Parser<StatementSyntax> Override =
        from word in Keyword("override of")
        from protection in Name
        from most in Keyword("at most").Then(_ => Time).XOptional()
        from role in Keyword("role").Then(_ => Name)
        from reason in QuotedText
        select new OverrideSyntax(protection, most.OrNull(), role, reason, word.Span);

    private static bool BeginsClause(TokenInput at) =>
        at.Position + 1 < at.TokenLine.Tokens.Length && at.TokenLine.Tokens[at.Position + 1] is { Kind: TokenKind.Word, Text: "if" or "differ" };

    private static DelaysSyntax DelaysOf(ClauseSet clauses) =>
        new(clauses.Find<AmountSyntax>("on after"), clauses.Find<AmountSyntax>("off after"), default);
}
