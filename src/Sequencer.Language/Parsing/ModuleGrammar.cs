using System.Collections.Immutable;
using Sequencer.Language.Syntax;
using Sprache;
using static Sequencer.Language.Parsing.Terminals;

namespace Sequencer.Language.Parsing;

/// <summary>Libraries, the modules in them, and the equipment made from these.</summary>
internal static class ModuleGrammar
{
    public static readonly Parser<StatementSyntax> Library = Keyword("library").Then(_ => WholeNumber).Select(version => new LibrarySyntax(version, version.Span));

    public static readonly Parser<StatementSyntax> Use = Keyword("use").Then(_ => QuotedText).Select(file => new UseSyntax(file, file.Span));

    private static readonly Parser<ModuleParameterSyntax> Parameter = Node(
        from kind in OneOf("the kind of a parameter (`name`, `address`, `text`, `quantity` or `number`)", "name", "address", "text", "quantity", "number")
        from name in Name
        select new ModuleParameterSyntax(kind, name, kind.Span));

    public static readonly Parser<StatementSyntax> Module =
        from word in Keyword("module")
        from name in Name
        from parameters in Bracketed(Parameter)
        select new ModuleSyntax(name, parameters, name.Span);

    /// <summary>A number, or with a unit a quantity.</summary>
    private static readonly Parser<(string Kind, WordSyntax Word)> Quantity =
        from minus in Word(token => token is { Kind: TokenKind.Symbol, Text: "-" }).XOptional()
        from number in Word(token => token.Kind == TokenKind.Number)
        from unit in Word(token => token.Kind == TokenKind.Word && !token.IsKeyword).XOptional()
        let sign = minus.OrNull()
        let measure = unit.OrNull()
        select (
            measure is null ? "number" : "quantity",
            new WordSyntax(
                sign?.Text + number.Text + (measure is null ? "" : " " + measure.Text),
                (sign ?? number).Span.Cover((measure ?? number).Span)));

    private static readonly Parser<(string Kind, WordSyntax Word)> Value =
        QuotedText.Select(text => ("text", new WordSyntax($"\"{text.Text}\"", text.Span)))
            .XOr(Address.Select(address => ("address", address)))
            .XOr(NameAnywhere.Select(name => ("name", name)))
            .XOr(Quantity);

    private static readonly Parser<ArgumentSyntax> Argument = Node(
        from parameter in Name
        from sign in Symbol("=")
        from value in Value
        select new ArgumentSyntax(parameter, value.Kind, value.Word, parameter.Span));

    public static readonly Parser<StatementSyntax> Equipment =
        from word in Keyword("equipment")
        from name in Name
        from sign in Keyword("is")
        from module in Name
        from arguments in Bracketed(Argument)
        select new EquipmentSyntax(name, module, arguments, name.Span);

    private static Parser<WordSyntax> Word(Func<Token, bool> test) => Match(test, null, []).Select(token => new WordSyntax(token.Text, token.Span));

    private static Parser<ImmutableArray<T>> Bracketed<T>(Parser<T> part) =>
        from open in Symbol("(")
        from parts in part.SeparatedBy(Symbol(",", null)).XOptional()
        from close in Symbol(")")
        select parts.GetOrElse([]);
}
