using System.Collections.Immutable;
using Sequencer.Language.Parsing;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>
/// Puts the declarations of modules behind the line that asks for equipment, before anything is bound: after this stage
/// there are no modules. Reports SEQ0260 to SEQ0271 and what is wrong in the libraries.
/// </summary>
internal sealed class ModuleExpansion
{
    private readonly LibrarySet _libraries;
    private readonly DiagnosticBag _diagnostics;
    private readonly ParseCache _cache;
    private readonly HashSet<string> _names = new(StringComparer.OrdinalIgnoreCase);
    private readonly ImmutableArray<PlacedStatement>.Builder _statements = ImmutableArray.CreateBuilder<PlacedStatement>();
    private long _characters;

    private ModuleExpansion(LibrarySet libraries, ParseCache cache, DiagnosticBag diagnostics)
    {
        _libraries = libraries;
        _cache = cache;
        _diagnostics = diagnostics;
    }

    public static ParsedProgram Expand(ParsedProgram program, LibraryReader? reader, ParseCache cache, DiagnosticBag diagnostics)
    {
        LibrarySet libraries = new(reader, diagnostics);
        ImmutableArray<(string, SourceSpan)> uses = [.. program.Statements
            .Where(placed => placed.Statement is UseSyntax).Select(placed => (((UseSyntax)placed.Statement).File.Text, At(placed, ((UseSyntax)placed.Statement).File)))];
        ModuleExpansion expansion = new(libraries, cache, diagnostics);
        IEnumerable<DeclarationSyntax> declared = program.Statements.Select(placed => placed.Statement).OfType<DeclarationSyntax>();
        expansion._names.UnionWith(declared.Where(declaration => declaration is not EquipmentSyntax).Select(declaration => declaration.Name.Text));
        expansion.Add(program.Statements, libraries.Seen(uses), []);
        libraries.ReportUseless(uses, [.. declared.OfType<EquipmentSyntax>().Select(equipment => equipment.Module.Text)]);
        return program with { Statements = expansion._statements.ToImmutable() };
    }

    private void Add(ImmutableArray<PlacedStatement> statements, ImmutableArray<Module> modules, ImmutableArray<Module> around)
    {
        foreach (PlacedStatement placed in statements)
        {
            bool isMalformed = placed.Statement is MalformedLine { Keyword: "equipment" or "use" };
            if (!isMalformed)
            {
                _statements.Add(placed);
            }

            if (isMalformed || (placed.Statement is EquipmentSyntax equipment && !Make(equipment, placed, modules, around)))
            {
                _statements.Add(placed with { Statement = Missing(placed.Statement) });
            }
        }
    }

    /// <summary>Whether all of it could be made; what is wrong was told, or will be told of a name that is not free.</summary>
    private bool Make(EquipmentSyntax equipment, PlacedStatement placed, ImmutableArray<Module> modules, ImmutableArray<Module> around)
    {
        if (!_names.Add(equipment.Name.Text))
        {
            return false;
        }

        if (modules.FirstOrDefault(module => module.Name == equipment.Module.Text) is not { } found)
        {
            string[] names = [.. modules.Select(module => module.Name)];
            string? near = NearestWord.Find(equipment.Module.Text, names);
            if (_libraries.AllRead)
            {
                _diagnostics.Add(ModuleDiagnostics.UnknownModule(At(placed, equipment.Module), equipment.Module.Text, modules.FirstOrDefault(module => module.Name == near)) with
                {
                    Fix = Fix.Replace(At(placed, equipment.Module), NearestWord.Only(equipment.Module.Text, names)),
                });
            }

            return false;
        }

        if (around.Contains(found))
        {
            string way = string.Join(", in it ", around.SkipWhile(module => module != found).Append(found).Select(module => $"`{module.Name}`"));
            _diagnostics.Add(ModuleDiagnostics.ContainsItself(At(placed, equipment.Module), found.Name, way));
            return false;
        }

        return found.IsSound && ModuleArguments.Check(equipment, found, node => At(placed, node), _diagnostics) && Read(equipment, found, placed, around);
    }

    private bool Read(EquipmentSyntax equipment, Module module, PlacedStatement placed, ImmutableArray<Module> around)
    {
        SourceSpan asked = At(placed, equipment.Name);
        if (around.Length >= ProgramLimits.ModuleDepth)
        {
            _diagnostics.Add(ModuleDiagnostics.TooMuch(asked, $"modules stand in modules more than {ProgramLimits.ModuleDepth} deep"));
            return false;
        }

        Dictionary<string, ModuleWord> words = module.Locals.ToDictionary(local => local, local => new ModuleWord($"{equipment.Name.Text}_{local}"), StringComparer.Ordinal);
        foreach (ArgumentSyntax argument in equipment.Arguments)
        {
            words[argument.Parameter.Text] = new ModuleWord(argument.Value.Text, At(placed, argument.Value));
        }

        SourceText text = ModuleText.Of(module.Source, module.Lines, words.GetValueOrDefault, new ModuleUse(equipment.Name.Text, asked));
        _characters += text.Content.Length;
        if (_characters > ProgramLimits.FileBytes)
        {
            _diagnostics.Add(ModuleDiagnostics.TooMuch(asked, $"with their words put in they have more than {ProgramLimits.FileBytes} characters"));
            return false;
        }

        ParsedProgram parsed = ProgramParser.Parse(text, _cache, _diagnostics);
        Add(parsed.Statements, _libraries.SeenFrom(module), around.Add(module));
        return true;
    }

    /// <summary>Equipment that could not be made might have declared any name: none is told to be missing.</summary>
    private static MalformedLine Missing(StatementSyntax statement) =>
        new(new LineFault(statement.Span, _ => throw new InvalidOperationException("it was told before")), "equipment", null, statement.Span);

    private static SourceSpan At(PlacedStatement placed, SyntaxNode node) => new(placed.Source, node.Span.Shift(placed.Offset));
}
