using System.Collections.Immutable;

namespace Sequencer.Language.Programs;

/// <summary>The checked programs of a site, in the order of <c>site.yaml</c>, and their common scan period.</summary>
public sealed record SiteProgram(string Name, int ScanMilliseconds, ImmutableArray<UnitProgram> Units)
{
    /// <summary>
    /// What the site calls something that a unit declares. Tags are the plant's and unique on the site; the names of
    /// protections and requirements are the unit's, and carry its name where there are several.
    /// </summary>
    public string NameOf(UnitProgram unit, string name) => Units.Length > 1 ? $"{unit.Name}.{name}" : name;
}
