using System.Collections.Immutable;
using Sequencer.Export.Wiring;

namespace Sequencer.Export.Writing;

/// <summary>The exported text; per unit, what its variables stand for; and what stands around the units.</summary>
public sealed record StructuredTextExport(string Text, ImmutableArray<ExportedBlock> Blocks, SiteWiring Wiring);
