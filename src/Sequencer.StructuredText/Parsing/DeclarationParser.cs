using System.Collections.Immutable;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Parsing;

/// <summary>Variables' sections and types.</summary>
internal sealed class DeclarationParser
{
    private static readonly string[] Stops =
    [
        "END_VAR", "END_TYPE", "VAR", "VAR_INPUT", "VAR_OUTPUT", "VAR_IN_OUT", "VAR_TEMP", "VAR_EXTERNAL", "VAR_GLOBAL",
        "FUNCTION", "FUNCTION_BLOCK", "PROGRAM", "END_FUNCTION", "END_FUNCTION_BLOCK", "END_PROGRAM", "CONFIGURATION", "TYPE",
    ];

    private readonly TokenReader _tokens;
    private readonly ExpressionParser _expressions;

    public DeclarationParser(TokenReader tokens, ExpressionParser expressions)
    {
        _tokens = tokens;
        _expressions = expressions;
    }

    public VariableSectionKind? SectionKind => _tokens.Current.Kind != TokenKind.Keyword ? null : _tokens.Current.Text switch
    {
        "VAR" => VariableSectionKind.Local,
        "VAR_INPUT" => VariableSectionKind.Input,
        "VAR_OUTPUT" => VariableSectionKind.Output,
        "VAR_IN_OUT" => VariableSectionKind.InOut,
        "VAR_TEMP" => VariableSectionKind.Temporary,
        "VAR_EXTERNAL" => VariableSectionKind.External,
        "VAR_GLOBAL" => VariableSectionKind.Global,
        _ => null,
    };

    /// <summary>The sections that stand here, one behind another.</summary>
    public ImmutableArray<VariableSectionSyntax> Sections()
    {
        ImmutableArray<VariableSectionSyntax>.Builder sections = ImmutableArray.CreateBuilder<VariableSectionSyntax>();
        while (SectionKind is { } kind)
        {
            sections.Add(Section(kind));
        }

        return sections.ToImmutable();
    }

    /// <summary>The declarations of a <c>TYPE ... END_TYPE</c>.</summary>
    public void Types(ImmutableArray<DeclarationSyntax>.Builder declarations)
    {
        _tokens.Take();
        while (!_tokens.AtEnd && !_tokens.AtAny(Stops))
        {
            SourceSpan start = _tokens.Current.Span;
            NameSyntax name = DeclaredName("the name of a type");
            _tokens.Expect(":");
            TypeSyntax type = Type();
            ExpressionSyntax? initial = _tokens.TryTake(":=") ? _expressions.FirstValue() : null;
            if (!_tokens.IsLost)
            {
                declarations.Add(new TypeDeclarationSyntax(name, type, initial, _tokens.Since(start)));
                _tokens.TryTake(";");
            }

            _tokens.Recover(Stops);
        }

        _tokens.Expect("END_TYPE");
        _tokens.Recover(Stops);
    }

    public NameSyntax DeclaredName(string what)
    {
        NameSyntax name = _expressions.Name(what);
        if (!_tokens.IsLost && (ReservedWords.TypeNames.Contains(name.Text) || ReservedWords.StandardNames.Contains(name.Text)))
        {
            _tokens.Report(StructuredTextDiagnostics.ReservedName(name.Span));
        }

        return name;
    }

    public TypeSyntax Type()
    {
        SourceSpan start = _tokens.Current.Span;
        if (_tokens.At("("))
        {
            return Enumeration();
        }

        if (_tokens.AtAny(["ARRAY", "STRUCT"]) && !_tokens.IsLost && _tokens.Enter())
        {
            TypeSyntax compound = _tokens.At("ARRAY") ? Array() : Structure();
            _tokens.Leave();
            return compound;
        }

        if (_tokens.At("REF_TO"))
        {
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(start, "`REF_TO`"));
        }

        NameSyntax name = _expressions.Name("a type");
        if (!_tokens.IsLost && name.Text.EndsWith("STRING", StringComparison.OrdinalIgnoreCase) && _tokens.AtAny(["[", "("]))
        {
            string closing = _tokens.Take().Is("[") ? "]" : ")";
            ExpressionSyntax length = _expressions.Expression();
            _tokens.Expect(closing);
            return new StringTypeSyntax(name, length, _tokens.Since(start));
        }

        if (_tokens.At("(") && _tokens.Next.Kind == TokenKind.Name && (_tokens.Ahead(2).Is(",") || _tokens.Ahead(2).Is(")") || _tokens.Ahead(2).Is(":=")))
        {
            return Enumeration(name);
        }

        if (_tokens.IsLost || !_tokens.TryTake("("))
        {
            return new NamedTypeSyntax(name, name.Span);
        }

        ExpressionSyntax lower = _expressions.Expression();
        _tokens.Expect("..");
        ExpressionSyntax upper = _expressions.Expression();
        _tokens.Expect(")");
        return new SubrangeTypeSyntax(name, lower, upper, _tokens.Since(start));
    }

    private ArrayTypeSyntax Array()
    {
        SourceSpan start = _tokens.Take().Span;
        ImmutableArray<DimensionSyntax>.Builder dimensions = ImmutableArray.CreateBuilder<DimensionSyntax>();
        _tokens.Expect("[");
        do
        {
            SourceSpan place = _tokens.Current.Span;
            ExpressionSyntax lower = _expressions.Expression();
            _tokens.Expect("..");
            ExpressionSyntax upper = _expressions.Expression();
            dimensions.Add(new DimensionSyntax(lower, upper, _tokens.Since(place)));
        }
        while (_tokens.TryTake(","));
        _tokens.Expect("]");
        _tokens.Expect("OF");
        TypeSyntax element = Type();
        return new ArrayTypeSyntax(dimensions.ToImmutable(), element, _tokens.Since(start));
    }

    private StructureTypeSyntax Structure()
    {
        SourceSpan start = _tokens.Take().Span;
        ImmutableArray<VariableSyntax>.Builder fields = ImmutableArray.CreateBuilder<VariableSyntax>();
        while (!_tokens.IsLost && !_tokens.AtEnd && !_tokens.At("END_STRUCT"))
        {
            Variables(fields);
        }

        _tokens.Expect("END_STRUCT");
        return new StructureTypeSyntax(fields.ToImmutable(), _tokens.Since(start));
    }

    private EnumerationTypeSyntax Enumeration(NameSyntax? of = null)
    {
        SourceSpan start = _tokens.Take().Span;
        ImmutableArray<EnumerationValueSyntax>.Builder values = ImmutableArray.CreateBuilder<EnumerationValueSyntax>();
        do
        {
            NameSyntax name = _expressions.Name("a name of the enumeration");
            values.Add(new EnumerationValueSyntax(name, _tokens.TryTake(":=") ? _expressions.Expression() : null));
        }
        while (_tokens.TryTake(","));
        _tokens.Expect(")");
        return new EnumerationTypeSyntax(of, values.ToImmutable(), _tokens.Since(start));
    }

    private VariableSectionSyntax Section(VariableSectionKind kind)
    {
        SourceSpan start = _tokens.Take().Span;
        Retention retention = Retention.Unsaid;
        bool constant = false;
        while (_tokens.AtAny(["RETAIN", "NON_RETAIN", "CONSTANT"]))
        {
            string word = _tokens.Take().Text;
            constant |= word == "CONSTANT";
            retention = word switch { "RETAIN" => Retention.Retain, "NON_RETAIN" => Retention.NonRetain, _ => retention };
        }

        ImmutableArray<VariableSyntax>.Builder variables = ImmutableArray.CreateBuilder<VariableSyntax>();
        while (!_tokens.AtEnd && !_tokens.AtAny(Stops))
        {
            Variables(variables);
            _tokens.Recover(Stops);
        }

        _tokens.Expect("END_VAR");
        _tokens.Recover(Stops);
        return new VariableSectionSyntax(kind, retention, constant, variables.ToImmutable(), _tokens.Since(start));
    }

    /// <summary>One line of a section: names, address, type, initial value.</summary>
    private void Variables(ImmutableArray<VariableSyntax>.Builder variables)
    {
        List<(NameSyntax Name, AddressSyntax? Address)> names = [];
        do
        {
            names.Add((DeclaredName("the name of a variable"), Address()));
        }
        while (_tokens.TryTake(","));
        _tokens.Expect(":");
        TypeSyntax type = Type();
        if (_tokens.AtAny(["R_EDGE", "F_EDGE"]))
        {
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(_tokens.Current.Span, $"`{_tokens.Current.Text}`"));
        }

        ExpressionSyntax? initial = _tokens.TryTake(":=") ? _expressions.FirstValue() : null;
        _tokens.Expect(";");
        if (!_tokens.IsLost)
        {
            variables.AddRange(names.Select(declared => new VariableSyntax(declared.Name, declared.Address, type, initial)));
        }
    }

    private AddressSyntax? Address()
    {
        if (!_tokens.TryTake("AT"))
        {
            return null;
        }

        if (_tokens.Current.Kind != TokenKind.Address)
        {
            _tokens.Lose("an address such as `%IX0.0`");
            return null;
        }

        Token token = _tokens.Take();
        return new AddressSyntax(token.Text, token.Span);
    }
}
