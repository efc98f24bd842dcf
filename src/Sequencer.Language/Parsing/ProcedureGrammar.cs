using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>The head of a program, steps, what they do, and the ways between them.</summary>
internal static class ProcedureGrammar
{
    private static readonly Parser<WordSyntax> ThenReaction = Keyword("then").Then(_ => ProtectionGrammar.Reaction);

    private static readonly Parser<ImmutableArray<NumberSyntax>> Targets =
        OneOf("`finish`", "finish").Select(_ => ImmutableArray<NumberSyntax>.Empty)
            .XOr(WholeNumber.SeparatedBy(Keyword("and")));

    /// <summary>Where a limit leads: to one step, or (null) to the end of the branch.</summary>
    private static readonly Parser<NumberSyntax?> WayOut =
        OneOf("`finish`", "finish").Select(_ => (NumberSyntax?)null).XOr(WholeNumber.Select(step => (NumberSyntax?)step));

    private static readonly Parser<(AmountSyntax Time, AmountSyntax Within)> Fine =
        from time in Time
        from word in Keyword("within")
        from within in AmountWithUnit
        select (time, within);

    /// <summary>A comma alone is not taken: it is the line's, and said to be a mistake where it stands.</summary>
    private static readonly Parser<WordSyntax> AtMost = Symbol(",", null).Then(_ => Keyword("at most")).Or(Keyword("at most"));

    private static Parser<TimesSyntax> Times(WordSyntax word) =>
        from most in WholeNumber
        from times in OneOf("`times`", "times", "time")
        from comma in Symbol(",", null).XOptional()
        from reaction in ThenReaction
        from message in QuotedText
        select new TimesSyntax(most, reaction, message, word.Span);

    public static readonly Parser<StatementSyntax> Language = Keyword("language").Then(_ => WholeNumber).Select(version => new LanguageSyntax(version, version.Span));

    public static readonly Parser<StatementSyntax> Unit =
        from word in Keyword("unit")
        from name in Name
        from title in QuotedText
        select new UnitSyntax(name, title, name.Span);

    public static readonly Parser<StatementSyntax> Procedure = Keyword("procedure").Select(word => new ProcedureSyntax(word.Span));

    public static readonly Parser<WordSyntax> SectionWord = OneOf(
        "a state with steps (`holding`, `restarting`, `stopping` or `aborting`)", [.. Sections.All.Select(Sections.Word)]);

    public static readonly Parser<StatementSyntax> Section = SectionWord.Select(word => new SectionSyntax(word, word.Span));

    public static readonly Parser<StatementSyntax> Step =
        from word in Keyword("step")
        from number in WholeNumber
        from title in QuotedText
        from onlyIf in Keyword("only if").Then(_ => ExpressionGrammar.Condition).XOptional()
        select new StepSyntax(number, title, onlyIf.OrNull(), word.Span);

    public static readonly Parser<StatementSyntax> Drive =
        from verb in OneOf(null, "open", "close", "run", "stop")
        from name in NameAnywhere
        from after in Keyword("after").Then(_ => Time).XOptional()
        from duration in Keyword("for").Then(_ => Time).XOptional()
        from once in (duration.IsDefined ? Keyword("once a batch") : Nothing<WordSyntax>()).XOptional()
        from each in (duration.IsDefined ? Keyword("at each").Then(_ => ExpressionGrammar.Condition) : Nothing<ExpressionSyntax>()).XOptional()
        from during in Keyword("while").Then(_ => ExpressionGrammar.Condition).XOptional()
        from until in Keyword("until").Then(_ => ExpressionGrammar.Condition).XOptional()
        select new DriveSyntax(verb, name, after.OrNull(), duration.OrNull(), once.IsDefined, each.OrNull(), during.OrNull(), until.OrNull(), verb.Span);

    public static readonly Parser<StatementSyntax> Dose =
        from word in Keyword("dose")
        from name in NameAnywhere
        from dose in TowardReading(word, name).XOr(ByAmount(word, name))
        select dose;

    private static Parser<StatementSyntax> TowardReading(WordSyntax word, WordSyntax name) =>
        from pulse in Keyword("pulse").Then(_ => Time)
        from fine in Symbol(",", null).Then(_ => Fine).Optional()
        from comma in Symbol(",", null).XOptional()
        from wait in Keyword("then").Then(_ => Keyword("wait")).Then(_ => Time)
        from signal in Keyword("toward").Then(_ => Name)
        from target in Keyword("at").Then(_ => ExpressionGrammar.Amount)
        from second in Symbol(",")
        from most in Keyword("at most").Then(_ => AmountWithUnit)
        from batch in Keyword("a batch")
        from mostThen in ThenReaction.XOptional()
        from third in Symbol(",")
        from least in Keyword("no").Then(_ => AmountWithUnit)
        from pulses in Keyword("in").Then(_ => WholeNumber)
        from last in OneOf("`pulses`", "pulses", "pulse")
        from leastThen in ThenReaction.XOptional()
        select (StatementSyntax)new DoseSyntax(
            name,
            pulse,
            fine.IsDefined ? fine.Get().Time : null,
            fine.IsDefined ? fine.Get().Within : null,
            wait,
            signal,
            target,
            most,
            mostThen.OrNull(),
            least,
            pulses,
            leastThen.OrNull(),
            word.Span);

    private static Parser<StatementSyntax> ByAmount(WordSyntax word, WordSyntax name) =>
        from amount in Keyword("amount").Then(_ => AmountWithUnit)
        from dose in Keyword("once a batch").Select(_ => (StatementSyntax)new AmountDoseSyntax(name, amount, null, null, null, null, null, word.Span))
            .XOr(InProportion(word, name, amount))
        select dose;

    private static Parser<StatementSyntax> InProportion(WordSyntax word, WordSyntax name, AmountSyntax amount) =>
        from per in Keyword("per").Then(_ => UnitName)
        from of in Keyword("of").Then(_ => ExpressionGrammar.Amount)
        from pulse in Keyword("in pulses of").Then(_ => Time).XOptional()
        from comma in Symbol(",")
        from most in Keyword("at most").Then(_ => AmountWithUnit)
        from batch in Keyword("a batch")
        from then in ThenReaction.XOptional()
        select (StatementSyntax)new AmountDoseSyntax(name, amount, per, of, pulse.OrNull(), most, then.OrNull(), word.Span);

    public static readonly Parser<StatementSyntax> Prompt =
        from word in Keyword("prompt")
        from name in Name
        from question in QuotedText
        from answers in Keyword("answers").Then(_ => QuotedText.SeparatedBy(Symbol(",", null)))
        from role in Keyword("role").Then(_ => Name)
        from comma in Symbol(",", null).XOptional()
        from limit in Keyword("limit").Then(_ => Time)
        from second in Symbol(",", null).XOptional()
        from then in ThenReaction
        from message in QuotedText
        select new PromptSyntax(name, question, answers, role, limit, then, message, word.Span);

    public static readonly Parser<StatementSyntax> Record =
        from word in Keyword("record")
        from title in QuotedText
        from value in ExpressionGrammar.Amount
        select new RecordSyntax(title, value, word.Span);

    public static readonly Parser<StatementSyntax> Claim =
        from word in Keyword("claim")
        from equipment in NameAnywhere
        from comma in Symbol(",", null).XOptional()
        from limit in Keyword("limit").Then(_ => Time)
        from second in Symbol(",", null).XOptional()
        from reaction in Keyword("then").Then(_ => OneOf("`hold`, `stop` or `abort`", "hold", "stop", "abort"))
        from message in QuotedText
        from third in Symbol(",", null).XOptional()
        from released in Keyword("released while held").XOptional()
        select new ClaimSyntax(equipment, limit, reaction, message, released.IsDefined, word.Span);

    public static readonly Parser<StatementSyntax> Ask =
        from word in Keyword("ask")
        from unit in Name
        from start in Keyword("to start")
        select new AskSyntax(unit, word.Span);

    public static readonly Parser<StatementSyntax> RestartAt =
        from word in Keyword("restart at step")
        from step in WholeNumber
        select new RestartAtSyntax(step, word.Span);

    public static readonly Parser<StatementSyntax> Expect = Keyword("expect").Then(_ => Time).Select(time => new ExpectSyntax(time, time.Span));

    public static readonly Parser<StatementSyntax> Limit =
        from word in Keyword("limit")
        from time in Time
        from comma in Symbol(",", null).XOptional()
        from then in Keyword("then")
        from what in ProtectionGrammar.Reaction.Select(reaction => (Reaction: (WordSyntax?)reaction, GoTo: (NumberSyntax?)null))
            .XOr(Keyword("go").Then(_ => WayOut).Select(step => (Reaction: (WordSyntax?)null, GoTo: step)))
        from message in QuotedText
        select new LimitSyntax(time, what.Reaction, what.GoTo, message, word.Span);

    public static readonly Parser<StatementSyntax> Go =
        from word in Keyword("go")
        from targets in Targets
        from condition in Keyword("when").Then(_ => ExpressionGrammar.Condition)
        from times in AtMost.Optional()
        from most in (times.IsDefined ? Times(times.Get()) : Nothing<TimesSyntax>()).XOptional()
        select new GoSyntax(targets, condition, most.OrNull(), word.Span);

    public static readonly Parser<StatementSyntax> Set =
        from word in Keyword("set")
        from name in Name
        from value in Keyword("to").Then(_ => ExpressionGrammar.Amount)
        select new SetSyntax(name, value, word.Span);

    public static readonly Parser<StatementSyntax> Ramp =
        from word in Keyword("ramp")
        from name in Name
        from start in Keyword("from").Then(_ => AmountWithUnit)
        from end in Keyword("to").Then(_ => AmountWithUnit)
        from time in Keyword("in").Then(_ => Time)
        select new RampSyntax(name, start, end, time, word.Span);

    public static readonly Parser<StatementSyntax> Keep =
        from word in Keyword("keep")
        from name in Name
        from position in OneOf("a position (`open`, `closed`, `running` or `stopped`)", "open", "closed", "running", "stopped")
        from until in Keyword("until step").Then(_ => WholeNumber)
        select new KeepSyntax(name, position, until, word.Span);

    public static readonly Parser<StatementSyntax> Join =
        from word in Keyword("join")
        from sources in WholeNumber.SeparatedBy(Symbol(","))
        from targets in Keyword("to").Then(_ => Targets)
        from condition in Keyword("when").Then(_ => ExpressionGrammar.Condition)
        select new JoinSyntax(sources, targets, condition, word.Span);
}
