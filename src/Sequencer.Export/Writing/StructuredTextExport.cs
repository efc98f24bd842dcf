using System.Collections.Immutable;

namespace Sequencer.Export.Writing;

/// <summary>The exported text and, per unit, what its variables stand for.</summary>
public sealed record StructuredTextExport(string Text, ImmutableArray<ExportedBlock> Blocks);
