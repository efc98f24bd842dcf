using Sequencer.Language.Syntax;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>Inputs, outputs, reagents and parameters.</summary>
internal static class SignalGrammar
{
    private static readonly Parser<WordSyntax> Position = OneOf("a position (`open`, `closed`, `running` or `stopped`)", "open", "closed", "running", "stopped");

    private static readonly Parser<RestSyntax> WhilePosition =
        from position in Position
        from condition in Keyword("while", null).Then(_ => ExpressionGrammar.Condition).XOptional()
        from otherwise in (condition.IsDefined ? Keyword("else", null).Then(_ => Position) : Nothing<WordSyntax>()).XOptional()
        from bad in (condition.IsDefined ? Keyword("if bad", null).Then(_ => Position) : Nothing<WordSyntax>()).XOptional()
        select new RestSyntax(position, condition.OrNull(), otherwise.OrNull(), bad.OrNull(), position.Span);

    private static readonly Parser<RestSyntax> Rest = Node(
        OneOf("`last`", "last").Select(last => new RestSyntax(last, null, null, null, last.Span)).XOr(WhilePosition));

    private static readonly Parser<ConfirmSyntax> Confirm =
        from first in Name
        from second in Symbol(",").Then(_ => Name).XOptional()
        from word in Keyword("within")
        from time in Time
        from reaction in Keyword("else", null).Then(_ => ProtectionGrammar.Reaction).XOptional()
        select new ConfirmSyntax(first, second.OrNull(), time, reaction.OrNull(), first.Span);

    private static readonly Parser<DeliversSyntax> Delivers =
        from reagent in Name
        from word in Keyword("at")
        from rate in AmountWithUnit
        select new DeliversSyntax(reagent, rate, reagent.Span);

    private static readonly Parser<DrivenSyntax> Driven = Node(
        ProcedureGrammar.SectionWord.SeparatedBy(Keyword("or")).Select(sections => new DrivenSyntax(sections, sections[0].Span)));

    private static readonly Parser<StatementSyntax> Analogue =
        from name in Name
        from low in SignedNumber
        from dots in Symbol("..")
        from high in SignedNumber
        from unit in UnitName
        from at in Keyword("at")
        from address in Address
        from description in QuotedText
        from clauses in ClauseSet.AnyOf(ClauseSet.Clause("bad after", Time), ClauseSet.Clause("usable only while", ExpressionGrammar.Condition))
        select new AnalogueInputSyntax(
            name, low, high, unit, address, description, clauses.Find<AmountSyntax>("bad after"), clauses.Find<ExpressionSyntax>("usable only while"), name.Span);

    private static readonly Parser<StatementSyntax> Switch =
        from name in Name
        from word in Keyword("switch")
        from closed in Keyword("normally closed").XOptional()
        from at in Keyword("at")
        from address in Address
        from description in QuotedText
        from clauses in ClauseSet.AnyOf(ClauseSet.Clause("on after", Time), ClauseSet.Clause("off after", Time))
        select new SwitchInputSyntax(
            name, closed.IsDefined, address, description, clauses.Find<AmountSyntax>("on after"), clauses.Find<AmountSyntax>("off after"), name.Span);

    /// <summary>The two kinds of input part at the second word.</summary>
    public static readonly Parser<StatementSyntax> Input =
        from word in Keyword("input")
        from input in (Parser<StatementSyntax>)(place => HasWordNext((TokenInput)place) ? Switch(place) : Analogue(place))
        select input;

    private static readonly Parser<RateSyntax> Rate = Node(
        from change in AmountWithUnit
        from time in Keyword("in").Then(_ => Time)
        select new RateSyntax(change, time, change.Span));

    private static readonly Parser<StatementSyntax> AnalogueOutput =
        from name in Name
        from low in SignedNumber
        from dots in Symbol("..")
        from high in SignedNumber
        from unit in UnitName
        from at in Keyword("at")
        from address in Address
        from description in QuotedText
        from comma in Symbol(",", null).XOptional()
        from safe in Keyword("safe").Then(_ => AmountWithUnit)
        from clauses in ClauseSet.AnyOf(ClauseSet.Clause("emergency", AmountWithUnit), ClauseSet.Clause("rate at most", Rate))
        select new AnalogueOutputSyntax(
            name, low, high, unit, address, description, safe, clauses.Find<AmountSyntax>("emergency"), clauses.Find<RateSyntax>("rate at most"), name.Span);

    private static readonly Parser<StatementSyntax> Device =
        from name in Name
        from kind in OneOf("`valve` or `motor`", "valve", "motor")
        from at in Keyword("at")
        from address in Address
        from description in QuotedText
        from comma in Symbol(",", null).XOptional()
        from safe in Keyword("safe").Then(_ => Rest)
        from clauses in ClauseSet.AnyOf(
            ClauseSet.Clause("emergency", Rest),
            ClauseSet.Clause("held", Rest),
            ClauseSet.Clause("driven while", Driven),
            ClauseSet.Clause("de-energised", Position),
            ClauseSet.Clause("confirm", Node(Confirm)),
            ClauseSet.Clause("delivers", Node(Delivers)))
        select new OutputSyntax(
            name,
            kind,
            address,
            description,
            safe,
            clauses.Find<RestSyntax>("emergency"),
            clauses.Find<RestSyntax>("held"),
            clauses.Find<DrivenSyntax>("driven while"),
            clauses.Find<WordSyntax>("de-energised"),
            clauses.Find<ConfirmSyntax>("confirm"),
            clauses.Find<DeliversSyntax>("delivers"),
            name.Span);

    /// <summary>The two kinds of output part at the second word.</summary>
    public static readonly Parser<StatementSyntax> Output =
        from word in Keyword("output")
        from output in (Parser<StatementSyntax>)(place => HasWordNext((TokenInput)place) ? Device(place) : AnalogueOutput(place))
        select output;

    public static readonly Parser<StatementSyntax> Reagent =
        from word in Keyword("reagent")
        from name in Name
        from description in QuotedText.XOptional()
        from effect in (
            from way in OneOf("`raises` or `lowers`", "raises", "lowers")
            from signal in Name
            select (way, signal)).XOptional()
        from comma in Symbol(",", null).XOptional()
        from opposes in Keyword("opposes").Then(_ => Name.SeparatedBy(Symbol(",", null))).XOptional()
        select new ReagentSyntax(
            name,
            description.OrNull(),
            effect.IsDefined ? effect.Get().way : null,
            effect.IsDefined ? effect.Get().signal : null,
            opposes.IsDefined ? opposes.Get() : [],
            name.Span);

    public static readonly Parser<StatementSyntax> Parameter =
        from word in Keyword("parameter")
        from name in Name
        from sign in Symbol("=")
        from value in AmountWithUnit
        from since in Keyword("from")
        from low in AmountWithUnit
        from to in Keyword("to")
        from high in AmountWithUnit
        from description in QuotedText.XOptional()
        select new ParameterSyntax(name, value, low, high, description.OrNull(), name.Span);

    private static bool HasWordNext(TokenInput at) =>
        at.Position + 1 < at.TokenLine.Tokens.Length && at.TokenLine.Tokens[at.Position + 1] is { Kind: TokenKind.Word };
}
