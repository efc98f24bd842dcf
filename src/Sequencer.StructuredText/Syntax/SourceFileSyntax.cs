using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>What one file of structured text declares, in written order.</summary>
public sealed record SourceFileSyntax(SourceText Source, ImmutableArray<DeclarationSyntax> Declarations);
