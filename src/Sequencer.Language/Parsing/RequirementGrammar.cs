using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>Assumptions, requirements, and what a start and a restart need.</summary>
internal static class RequirementGrammar
{
    private static readonly Parser<AssumeSyntax> Rate =
        from signal in Name
        from way in OneOf("`rises` or `falls`", "rises", "falls")
        from most in Keyword("at most")
        from rate in AmountWithUnit
        from tolerance in Keyword("within").Then(_ => AmountWithUnit).XOptional()
        select new AssumeSyntax(signal, new TextSyntax(string.Empty, signal.Span), signal, way.Text == "rises", rate, tolerance.OrNull(), null, null, signal.Span);

    private static readonly Parser<AssumeSyntax> NeverSo =
        from word in Keyword("never")
        from condition in ExpressionGrammar.Condition
        select new AssumeSyntax(word, new TextSyntax(string.Empty, word.Span), null, false, null, null, condition, null, word.Span);

    public static readonly Parser<StatementSyntax> Assume =
        from word in Keyword("assume")
        from name in Name
        from title in QuotedText
        from fact in NeverSo.XOr(Rate)
        from comma in Symbol(",", null).XOptional()
        from monitored in Keyword("monitored").Then(_ => Symbol(",", null).XOptional()).Then(_ => Keyword("else")).Then(_ => ProtectionGrammar.Reaction).XOptional()
        select fact with { Name = name, Title = title, MonitoredElse = monitored.OrNull() };

    private static readonly Parser<RealRateSyntax> RealRate = Node(
        from comma in Symbol(",", null).XOptional()
        from way in OneOf(null, "rises", "falls")
        from most in Keyword("at most")
        from rate in AmountWithUnit
        from condition in Keyword("while").Then(_ => ExpressionGrammar.Condition).XOptional()
        select new RealRateSyntax(way.Text == "rises", rate, condition.OrNull(), way.Span));

    public static readonly Parser<StatementSyntax> Real =
        from word in Keyword("real")
        from name in Name
        from description in QuotedText
        from low in SignedNumber
        from dots in Symbol("..")
        from high in SignedNumber
        from unit in UnitName
        from read in Keyword("read by")
        from signal in Name
        from within in Keyword("within").Then(_ => AmountWithUnit)
        from rates in RealRate.Repeated()
        select new RealSyntax(name, description, low, high, unit, signal, within, rates, name.Span);

    public static readonly Parser<StatementSyntax> Calibrate =
        from word in Keyword("calibrate")
        from signal in NameAnywhere
        from most in Keyword("at most").Then(_ => Time)
        from role in Keyword("role").Then(_ => Name)
        from reason in QuotedText
        select new CalibrateSyntax(signal, most, role, reason, word.Span);

    private static readonly Parser<RequirementSyntax> Never =
        from word in Keyword("never")
        from condition in ExpressionGrammar.Condition
        select new NeverSyntax(condition, word.Span);

    private static readonly Parser<RequirementSyntax> Always =
        from word in Keyword("always")
        from condition in ExpressionGrammar.Condition
        from during in Keyword("while").Then(_ => ExpressionGrammar.Condition).XOptional()
        select new AlwaysSyntax(condition, during.OrNull(), word.Span);

    private static readonly Parser<(ResponseGoal Goal, ExpressionSyntax? Condition)> Everything =
        from word in Keyword("everything")
        from goal in OneOf("`safe`", "safe").Select(_ => ResponseGoal.EverythingSafe)
            .XOr(Keyword("at its emergency value").Select(_ => ResponseGoal.EverythingAtEmergency))
        select (goal, (ExpressionSyntax?)null);

    private static readonly Parser<AmountSyntax> Bound = Node(
        from number in SignedNumber
        from unit in OneOf("`scans`", "scan", "scans").Select(_ => (WordSyntax?)null).XOr(UnitName)
        select new AmountSyntax(number, unit, number.Span));

    private static readonly Parser<RequirementSyntax> Response =
        from word in Keyword("after")
        from trigger in ExpressionGrammar.Condition
        from comma in Symbol(",", null).XOptional()
        from goal in Everything.XOr(ExpressionGrammar.Condition.Select(condition => (ResponseGoal.Condition, (ExpressionSyntax?)condition)))
        from within in Keyword("within")
        from bound in Bound
        select new ResponseSyntax(trigger, goal.Item1, goal.Item2, bound, word.Span);

    public static readonly Parser<StatementSyntax> Require =
        from word in Keyword("require")
        from name in Name
        from title in QuotedText
        from fact in Node(Never.XOr(Always).XOr(Response))
        select new RequireSyntax(name, title, fact, fact.Span, name.Span);

    public static readonly Parser<StatementSyntax> Start =
        from word in Keyword("start")
        from start in OnlyWhen(word).XOr(AskedBy(word))
        select start;

    public static readonly Parser<StatementSyntax> HeldLimit =
        from word in Keyword("held at most")
        from time in Time
        from comma in Symbol(",", null).XOptional()
        from reaction in Keyword("then").Then(_ => OneOf("`alarm`, `stop` or `abort`", "alarm", "stop", "abort"))
        from message in QuotedText
        select new HeldLimitSyntax(time, reaction, message, word.Span);

    public static readonly Parser<StatementSyntax> Advance =
        from word in Keyword("advance by hand")
        from comma in Symbol(",", null).XOptional()
        from role in Keyword("role").Then(_ => Name)
        select new AdvanceSyntax(role, word.Span);

    private static Parser<StatementSyntax> OnlyWhen(WordSyntax word) =>
        from only in Keyword("only when")
        from condition in ExpressionGrammar.Condition
        from message in QuotedText
        select (StatementSyntax)new StartSyntax(condition, message, word.Span);

    private static Parser<StatementSyntax> AskedBy(WordSyntax word) =>
        from asked in Keyword("asked by")
        from units in Name.SeparatedBy(Symbol(",", null))
        select (StatementSyntax)new AskedSyntax(units, word.Span);

    public static readonly Parser<StatementSyntax> Restart =
        from word in Keyword("after power loss held")
        from comma in Symbol(",", null).XOptional()
        from wait in (
            from begins in Keyword("restart begins with")
            from time in Time
            from last in Keyword("wait")
            select time).XOptional()
        select new RestartSyntax(wait.OrNull(), word.Span);
}
