using System.Collections.Immutable;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Parsing;

/// <summary>A file of structured text as a tree; every mistake is reported in one pass.</summary>
public sealed class StructuredTextParser
{
    private static readonly string[] FileStops = ["FUNCTION", "FUNCTION_BLOCK", "PROGRAM", "CONFIGURATION", "TYPE", "VAR_GLOBAL"];
    private static readonly string[] ConfigurationStops = ["END_CONFIGURATION", "END_RESOURCE", "RESOURCE", "TASK", "PROGRAM", "VAR_GLOBAL"];

    private readonly TokenReader _tokens;
    private readonly ExpressionParser _expressions;
    private readonly DeclarationParser _declarations;
    private readonly StatementParser _statements;
    private readonly ImmutableArray<DeclarationSyntax>.Builder _found = ImmutableArray.CreateBuilder<DeclarationSyntax>();

    private StructuredTextParser(TokenReader tokens)
    {
        _tokens = tokens;
        _expressions = new ExpressionParser(tokens);
        _declarations = new DeclarationParser(tokens, _expressions);
        _statements = new StatementParser(tokens, _expressions);
    }

    public static SourceFileSyntax Parse(SourceText source, DiagnosticBag diagnostics)
    {
        StructuredTextParser parser = new(new TokenReader(Lexer.Read(source, diagnostics), diagnostics));
        parser.File();
        return new SourceFileSyntax(source, parser._found.ToImmutable());
    }

    private void File()
    {
        while (!_tokens.AtEnd)
        {
            Declaration();
            _tokens.Recover(FileStops);
        }
    }

    private void Declaration()
    {
        switch (_tokens.Current.Kind == TokenKind.Keyword ? _tokens.Current.Text : "")
        {
            case "TYPE":
                _declarations.Types(_found);
                break;
            case "FUNCTION":
                Unit(UnitKind.Function, "END_FUNCTION");
                break;
            case "FUNCTION_BLOCK":
                Unit(UnitKind.FunctionBlock, "END_FUNCTION_BLOCK");
                break;
            case "PROGRAM":
                Unit(UnitKind.Program, "END_PROGRAM");
                break;
            case "CONFIGURATION":
                Configuration();
                break;
            case "VAR_GLOBAL":
                _found.AddRange(_declarations.Sections().Select(section => new GlobalsSyntax(section, section.Span)));
                break;
            case "CLASS" or "INTERFACE" or "NAMESPACE" or "USING":
                _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(_tokens.Current.Span, $"`{_tokens.Current.Text}`"));
                _tokens.Take();
                break;
            default:
                if (!_tokens.TryTake(";"))
                {
                    _tokens.Lose("`TYPE`, `FUNCTION_BLOCK`, `PROGRAM`, `VAR_GLOBAL` or `CONFIGURATION`");
                    _tokens.Take();
                }

                break;
        }
    }

    private void Unit(UnitKind kind, string end)
    {
        SourceSpan start = _tokens.Take().Span;
        NameSyntax name = _declarations.DeclaredName("a name");
        TypeSyntax? type = kind == UnitKind.Function && _tokens.TryTake(":") ? _declarations.Type() : null;
        if (_tokens.IsLost)
        {
            return;
        }

        ImmutableArray<VariableSectionSyntax> sections = _declarations.Sections();
        if (_tokens.AtAny(["METHOD", "ACTION", "INITIAL_STEP", "EXTENDS", "IMPLEMENTS"]))
        {
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(_tokens.Current.Span, $"`{_tokens.Current.Text}`"));
        }

        ImmutableArray<StatementSyntax> body = _tokens.IsLost ? [] : _statements.UnitBody();
        if (!_tokens.AtEnd || !_tokens.IsLost)
        {
            _tokens.Expect(end);
        }

        _found.Add(new UnitSyntax(kind, name, type, sections, body, _tokens.Since(start)));
    }

    private void Configuration()
    {
        SourceSpan start = _tokens.Take().Span;
        NameSyntax name = _declarations.DeclaredName("a name");
        ImmutableArray<VariableSectionSyntax>.Builder globals = ImmutableArray.CreateBuilder<VariableSectionSyntax>();
        ImmutableArray<ResourceSyntax>.Builder resources = ImmutableArray.CreateBuilder<ResourceSyntax>();
        ImmutableArray<TaskSyntax>.Builder tasks = ImmutableArray.CreateBuilder<TaskSyntax>();
        ImmutableArray<ProgramInstanceSyntax>.Builder programs = ImmutableArray.CreateBuilder<ProgramInstanceSyntax>();
        while (!_tokens.IsLost && !_tokens.AtEnd && !_tokens.At("END_CONFIGURATION"))
        {
            if (_tokens.TryTake("RESOURCE"))
            {
                NameSyntax resource = _declarations.DeclaredName("a name");
                _tokens.Expect("ON");
                resources.Add(new ResourceSyntax(resource, _expressions.Name("the kind of processor")));
            }
            else if (_tokens.At("TASK"))
            {
                tasks.Add(Task());
            }
            else if (_tokens.At("PROGRAM"))
            {
                programs.Add(ProgramInstance());
            }
            else if (_declarations.SectionKind == VariableSectionKind.Global)
            {
                globals.AddRange(_declarations.Sections());
            }
            else if (!_tokens.TryTake("END_RESOURCE") && !_tokens.TryTake(";"))
            {
                _tokens.Lose("`RESOURCE`, `TASK`, `PROGRAM`, `VAR_GLOBAL` or `END_CONFIGURATION`");
                _tokens.Take();
            }

            _tokens.Recover(ConfigurationStops);
        }

        _tokens.Expect("END_CONFIGURATION");
        _found.Add(new ConfigurationSyntax(name, globals.ToImmutable(), resources.ToImmutable(), tasks.ToImmutable(), programs.ToImmutable(), _tokens.Since(start)));
    }

    private TaskSyntax Task()
    {
        SourceSpan start = _tokens.Take().Span;
        NameSyntax name = _expressions.Name("the name of a task");
        ImmutableArray<ArgumentSyntax> arguments = _expressions.Arguments();
        _tokens.Expect(";");
        return new TaskSyntax(name, arguments, _tokens.Since(start));
    }

    private ProgramInstanceSyntax ProgramInstance()
    {
        SourceSpan start = _tokens.Take().Span;
        NameSyntax name = _expressions.Name("the name of a program");
        NameSyntax? task = _tokens.TryTake("WITH") ? _expressions.Name("the name of a task") : null;
        _tokens.Expect(":");
        NameSyntax type = _expressions.Name("the type of a program");
        if (_tokens.At("("))
        {
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(_tokens.Current.Span, "a program with arguments"));
        }

        _tokens.Expect(";");
        return new ProgramInstanceSyntax(name, task, type, _tokens.Since(start));
    }
}
