using System.Collections.Immutable;
using Sequencer.Export.Writing;

namespace Sequencer.Export.Wiring;

/// <summary>What stands around the blocks of a site.</summary>
/// <param name="Points">The signals with an address, as the programs declare them.</param>
/// <param name="Operated">The inputs that the operator's station writes, with the names of the program's variables for them.</param>
public sealed record SiteWiring(ImmutableArray<WiredPoint> Points, ImmutableArray<ExportedVariable> Operated);
