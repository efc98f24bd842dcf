using System.Collections.Immutable;
using Sequencer.Language.Parsing;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>
/// A module: declarations with parameters in the place of some words, to be read once for each equipment made from it.
/// </summary>
/// <param name="Syntax">Its first line.</param>
/// <param name="Span">Its name.</param>
/// <param name="Source">The library.</param>
/// <param name="Lines">The lines of its body.</param>
/// <param name="Locals">The names that it declares itself; each use of it gives them its own name in front.</param>
/// <param name="Parts">The modules that equipment in it is made from.</param>
/// <param name="IsSound">False where its lines cannot be read: then its uses are not read either.</param>
internal sealed record Module(
    ModuleSyntax Syntax,
    SourceSpan Span,
    SourceText Source,
    ImmutableArray<LogicalLine> Lines,
    ImmutableHashSet<string> Locals,
    ImmutableHashSet<string> Parts,
    bool IsSound)
{
    public string Name => Syntax.Name.Text;

    public ModuleParameterSyntax? Parameter(string name) => Syntax.Parameters.FirstOrDefault(parameter => parameter.Name.Text == name);
}
