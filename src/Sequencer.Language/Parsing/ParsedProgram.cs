using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>
/// The statements of a file in written order, malformed ones among them. Not <see cref="IsWhole"/> where
/// the reader gave up before the end: then nothing can be said of what is missing.
/// </summary>
internal sealed record ParsedProgram(SourceText Source, ImmutableArray<PlacedStatement> Statements, bool IsWhole);
