using System.Collections.Immutable;

namespace Sequencer.Language.Programs;

/// <summary>The checked programs of a site, in the order of <c>site.yaml</c>, and their common scan period.</summary>
public sealed record SiteProgram(string Name, int ScanMilliseconds, ImmutableArray<UnitProgram> Units);
