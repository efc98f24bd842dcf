using System.Collections.Immutable;
using Sequencer.Language.Parsing;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>
/// Text to a library. Each module is read once with stand-ins for its parameters, so that its mistakes are told
/// whether it is used or not. Reports SEQ01xx, SEQ0262, SEQ0266, SEQ0267 and SEQ0270.
/// </summary>
internal sealed class LibraryParser
{
    private readonly SourceText _source;
    private readonly DiagnosticBag _diagnostics;
    private readonly List<Module> _modules = [];
    private readonly List<(string File, SourceSpan Span)> _uses = [];
    private readonly List<LogicalLine> _body = [];
    private ModuleSyntax? _module;
    private SourceSpan _moduleSpan;
    private int _moduleStart;
    private bool _isInLostModule;
    private bool _isWhole = true;

    private LibraryParser(SourceText source, DiagnosticBag diagnostics)
    {
        _source = source;
        _diagnostics = diagnostics;
    }

    public static Library Parse(SourceText source, DiagnosticBag diagnostics)
    {
        LibraryParser parser = new(source, diagnostics);
        parser.Read();
        return new Library(source, [.. parser._modules], [.. parser._uses], parser._isWhole);
    }

    private void Read()
    {
        LogicalLineReader reader = new(_source.Content);
        LogicalLine? line = reader.Next();
        if (line is null || !StartsWith(line, "library"))
        {
            _isWhole = false;
            bool isLibrary = line is not null && (StartsWith(line, "module") || StartsWith(line, "use"));
            _diagnostics.Add(ModuleDiagnostics.LibraryFirst(line is null ? _source.At(0, 0) : At(line.Span)) with
            {
                Fix = isLibrary && !_source.Content.Contains("library", StringComparison.Ordinal) ? Fix.FirstLine(_source, "library 1") : null,
            });
            return;
        }

        for (int malformed = 0; line is not null && malformed < ProgramLimits.MalformedLines; line = reader.Next())
        {
            malformed += Read(line) ? 0 : 1;
        }

        EndModule();
    }

    /// <summary>Whether the line can be read; those of a module wait for its end.</summary>
    private bool Read(LogicalLine line)
    {
        if (_module is not null && !StartsWith(line, "module"))
        {
            _body.Add(line);
            return true;
        }

        if (_isInLostModule && !StartsWith(line, "module"))
        {
            return true;
        }

        StatementSyntax statement = line.Fault is null
            ? StatementParser.Parse(Written(line))
            : StatementParser.Unreadable(Written(line)[..Math.Min(line.Span.Length, ProgramLimits.LineCharacters)], line.Fault);
        switch (statement)
        {
            case MalformedLine malformed:
                EndModule();
                _isWhole = false;
                _isInLostModule = malformed.Keyword == "module";
                TextSpan place = malformed.Fault.Span.Shift(line.Span.Start);
                _diagnostics.Add(malformed.Fault.Describe(_source.At(place.Start, place.Length)));
                return false;
            case ModuleSyntax module:
                EndModule();
                _isInLostModule = false;
                _module = module;
                _moduleStart = line.Span.Start;
                _moduleSpan = At(module.Name.Span.Shift(line.Span.Start));
                CheckHead(module, line.Span.Start);
                break;
            case UseSyntax use:
                _uses.Add((use.File.Text, At(use.File.Span.Shift(line.Span.Start))));
                break;
            case LibrarySyntax library when !library.Version.Value.Equals(Units.Rational.FromInt64(1)):
                _diagnostics.Add(ModuleDiagnostics.LibraryFirst(At(library.Version.Span.Shift(line.Span.Start))));
                break;
            case LibrarySyntax:
                break;
            default:
                _diagnostics.Add(ModuleDiagnostics.OutsideModule(At(line.Span)));
                break;
        }

        return true;
    }

    private void CheckHead(ModuleSyntax module, int offset)
    {
        HashSet<string> seen = new(StringComparer.OrdinalIgnoreCase);
        foreach (ModuleParameterSyntax parameter in module.Parameters.Where(parameter => !seen.Add(parameter.Name.Text)))
        {
            _diagnostics.Add(ModuleDiagnostics.NamedTwice(At(parameter.Name.Span.Shift(offset)), parameter.Name.Text));
        }

        if (_modules.Find(other => other.Name == module.Name.Text) is { } first)
        {
            _diagnostics.Add(ModuleDiagnostics.TwoModules(_moduleSpan, first));
        }
    }

    private void EndModule()
    {
        if (_module is { } module)
        {
            _modules.Add(ModuleOf(module));
        }

        _module = null;
        _body.Clear();
    }

    private Module ModuleOf(ModuleSyntax module)
    {
        DiagnosticBag found = new();
        ImmutableArray<LogicalLine> lines = [.. _body];
        SourceText readable = ModuleText.Of(_source, lines, name => StandIn(module, name) is { } standIn ? new ModuleWord(standIn) : null, null);
        ParsedProgram parsed = ProgramParser.Parse(readable, new ParseCache(), found);
        HashSet<string> locals = new(StringComparer.Ordinal);
        foreach (PlacedStatement statement in parsed.Statements)
        {
            if (statement.Statement is DeclarationSyntax declaration)
            {
                locals.Add(declaration.Name.Text);
            }
            else if (statement.Statement is not MalformedLine)
            {
                found.Add(ModuleDiagnostics.NoDeclaration(readable.At(statement.Offset + statement.Statement.Span.Start, statement.Statement.Span.Length)));
            }
        }

        locals.ExceptWith(module.Parameters.Select(parameter => parameter.Name.Text));
        if (!found.HasErrors)
        {
            CheckNames(module, lines, locals, found);
            CheckParameters(module, lines, found);
        }

        _diagnostics.AddRange(found.InOrder().Select(diagnostic => diagnostic with { Span = diagnostic.Span.Written }));
        ImmutableHashSet<string> parts = [.. parsed.Statements.Select(placed => placed.Statement).OfType<EquipmentSyntax>().Select(equipment => equipment.Module.Text)];
        return new Module(module, _moduleSpan, _source, lines, [.. locals], parts, !found.HasErrors);
    }

    private void CheckNames(ModuleSyntax module, ImmutableArray<LogicalLine> lines, HashSet<string> locals, DiagnosticBag found)
    {
        foreach (LogicalLine line in lines)
        {
            foreach (Token token in ModuleText.Names(_source, line))
            {
                if (!locals.Contains(token.Text) && module.Parameters.All(parameter => parameter.Name.Text != token.Text))
                {
                    SourceSpan place = At(token.Span.Shift(line.Span.Start));
                    string[] known = [.. locals, .. module.Parameters.Select(parameter => parameter.Name.Text)];
                    found.Add(ModuleDiagnostics.ForeignName(place, module.Name.Text, token.Text, NearestWord.Find(token.Text, known)) with
                    {
                        Fix = Fix.Replace(place, NearestWord.Only(token.Text, known)),
                    });
                }
            }
        }
    }

    private void CheckParameters(ModuleSyntax module, ImmutableArray<LogicalLine> lines, DiagnosticBag found)
    {
        HashSet<string> spoken = [.. lines.SelectMany(line => ModuleText.Names(_source, line)).Select(token => token.Text)];
        foreach (ModuleParameterSyntax parameter in module.Parameters.Where(parameter => !spoken.Contains(parameter.Name.Text)))
        {
            found.Add(ModuleDiagnostics.UnusedParameter(At(parameter.Name.Span.Shift(_moduleStart)), parameter.Name.Text, module.Name.Text));
        }
    }

    private static string? StandIn(ModuleSyntax module, string name) => module.Parameters.FirstOrDefault(parameter => parameter.Name.Text == name)?.Kind.Text switch
    {
        "address" => "%IX0.0",
        "text" => "\"text\"",
        "quantity" => "1 s",
        "number" => "1",
        _ => null,
    };

    private bool StartsWith(LogicalLine line, string word) => new Tokenizer(Written(line)).Read() is [var first, ..] && first.Text == word;

    private string Written(LogicalLine line) => _source.Content.Substring(line.Span.Start, line.Span.Length);

    private SourceSpan At(TextSpan span) => new(_source, span);
}
