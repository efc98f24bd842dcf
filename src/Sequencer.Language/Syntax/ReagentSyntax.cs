using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A chemical.</summary>
internal sealed record ReagentSyntax(
    WordSyntax Name,
    TextSyntax? Description,
    WordSyntax? Effect,
    WordSyntax? Signal,
    ImmutableArray<WordSyntax> Opposes,
    TextSpan Span) : DeclarationSyntax(Name, Span);
