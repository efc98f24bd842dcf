using Sequencer.Language.Syntax;

namespace Sequencer.Language.Parsing;

/// <summary>A statement where it stands in the file: its spans count from <see cref="Offset"/>.</summary>
internal readonly record struct PlacedStatement(int Offset, StatementSyntax Statement, string Documentation);
