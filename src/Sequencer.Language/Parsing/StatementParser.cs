using System.Collections.Frozen;
using System.Collections.Immutable;
using Sequencer.Language.Syntax;
using Sequencer.Text;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>
/// Turns the text of one logical line into a statement. The first word picks the parser, so that each
/// line meets only the alternatives of its own statement. Never throws: a broken line is a
/// <see cref="MalformedLine"/>.
/// </summary>
internal static class StatementParser
{
    private static readonly FrozenDictionary<string, Parser<StatementSyntax>> ByFirstWord = new Dictionary<string, Parser<StatementSyntax>>(StringComparer.Ordinal)
    {
        ["language"] = ProcedureGrammar.Language,
        ["unit"] = ProcedureGrammar.Unit,
        ["library"] = ModuleGrammar.Library,
        ["use"] = ModuleGrammar.Use,
        ["module"] = ModuleGrammar.Module,
        ["equipment"] = ModuleGrammar.Equipment,
        ["input"] = SignalGrammar.Input,
        ["output"] = SignalGrammar.Output,
        ["reagent"] = SignalGrammar.Reagent,
        ["parameter"] = SignalGrammar.Parameter,
        ["voted"] = ProtectionGrammar.Voted,
        ["group"] = ProtectionGrammar.Group,
        ["latch"] = ProtectionGrammar.Latch,
        ["fact"] = ProtectionGrammar.Fact,
        ["count"] = ProtectionGrammar.Count,
        ["interlock"] = ProtectionGrammar.Interlock,
        ["pair"] = ProtectionGrammar.Pair,
        ["shared"] = ProtectionGrammar.Shared,
        ["permissive"] = ProtectionGrammar.Permissive,
        ["trip"] = ProtectionGrammar.Trip,
        ["override"] = ProtectionGrammar.Override,
        ["alarm"] = ProtectionGrammar.Alarm,
        ["assume"] = RequirementGrammar.Assume,
        ["calibrate"] = RequirementGrammar.Calibrate,
        ["real"] = RequirementGrammar.Real,
        ["require"] = RequirementGrammar.Require,
        ["start"] = RequirementGrammar.Start,
        ["after"] = RequirementGrammar.Restart,
        ["held"] = RequirementGrammar.HeldLimit,
        ["advance"] = RequirementGrammar.Advance,
        ["procedure"] = ProcedureGrammar.Procedure,
        ["holding"] = ProcedureGrammar.Section,
        ["restarting"] = ProcedureGrammar.Section,
        ["stopping"] = ProcedureGrammar.Section,
        ["aborting"] = ProcedureGrammar.Section,
        ["step"] = ProcedureGrammar.Step,
        ["open"] = ProcedureGrammar.Drive,
        ["close"] = ProcedureGrammar.Drive,
        ["run"] = ProcedureGrammar.Drive,
        ["stop"] = ProcedureGrammar.Drive,
        ["dose"] = ProcedureGrammar.Dose,
        ["keep"] = ProcedureGrammar.Keep,
        ["set"] = ProcedureGrammar.Set,
        ["ramp"] = ProcedureGrammar.Ramp,
        ["prompt"] = ProcedureGrammar.Prompt,
        ["record"] = ProcedureGrammar.Record,
        ["claim"] = ProcedureGrammar.Claim,
        ["ask"] = ProcedureGrammar.Ask,
        ["restart"] = ProcedureGrammar.RestartAt,
        ["expect"] = ProcedureGrammar.Expect,
        ["limit"] = ProcedureGrammar.Limit,
        ["go"] = ProcedureGrammar.Go,
        ["join"] = ProcedureGrammar.Join,
    }.ToFrozenDictionary(pair => pair.Key, pair => Node(pair.Value.Then(statement => LineEnd.Select(_ => statement))), StringComparer.Ordinal);

    public static StatementSyntax Parse(string line)
    {
        Tokenizer tokenizer = new(line);
        ImmutableArray<Token> tokens = tokenizer.Read();
        if (tokenizer.Fault is not null)
        {
            return Malformed(tokenizer.Fault, tokens, line);
        }

        if (tokens[0].Kind != TokenKind.Word || !ByFirstWord.TryGetValue(tokens[0].Text, out Parser<StatementSyntax>? parser))
        {
            string? near = tokens[0].Kind == TokenKind.Word ? NearestWord.Find(tokens[0].Text, StatementWords.Forms.Keys) : null;
            string? only = tokens[0].Kind == TokenKind.Word ? NearestWord.Only(tokens[0].Text, StatementWords.Forms.Keys) : null;
            return Malformed(new LineFault(tokens[0].Span, at => ParseDiagnostics.UnknownStatement(at, near) with { Fix = Fix.Replace(at, only) }), tokens, line);
        }

        TokenLine tokenLine = new(line, tokens);
        IResult<StatementSyntax> result = parser(new TokenInput(tokenLine, 0));
        return result.WasSuccessful && tokenLine.Fault is null
            ? result.Value
            : Malformed(tokenLine.FurthestFault(), tokens, line);
    }

    /// <summary>A line that the reader found unreadable; its first words still tell what it was meant to be.</summary>
    public static MalformedLine Unreadable(string line, LineFault fault) => Malformed(fault, new Tokenizer(line).Read(), line);

    private static MalformedLine Malformed(LineFault fault, ImmutableArray<Token> tokens, string line) => new(
        fault,
        tokens.Length > 0 ? MeantKeyword(tokens) : null,
        tokens.Length > 1 ? new WordSyntax(tokens[1].Text, tokens[1].Span) : null,
        new TextSpan(0, line.Length));

    private static string? MeantKeyword(ImmutableArray<Token> tokens)
    {
        string first = tokens[0].Text;
        bool looksLikeStep = tokens.Length == 3 && tokens[1].Kind == TokenKind.Number && tokens[2].Kind == TokenKind.Text;
        return ByFirstWord.ContainsKey(first) ? first : looksLikeStep ? "step" : NearestWord.Find(first, StatementWords.Forms.Keys);
    }
}
