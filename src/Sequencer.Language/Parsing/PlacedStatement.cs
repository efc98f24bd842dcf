using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>A statement where it stands in its file, which may be a library's: its spans count from <see cref="Offset"/>.</summary>
internal readonly record struct PlacedStatement(SourceText Source, int Offset, StatementSyntax Statement, string Documentation);
