using System.Collections.Immutable;

namespace Sequencer.Language.Programs;

/// <summary>The checked programs of a site, in the order of <c>site.yaml</c>, and their common scan period.</summary>
public sealed record SiteProgram(string Name, int ScanMilliseconds, ImmutableArray<UnitProgram> Units)
{
    /// <summary>All shared equipment, with the unit that declares it.</summary>
    public IEnumerable<(UnitProgram Unit, SharedEquipment Equipment)> Shared =>
        Units.SelectMany(unit => unit.Shared.Select(equipment => (unit, equipment)));

    /// <summary>The units that claim the equipment, in the order of <c>site.yaml</c>, which decides ties.</summary>
    public ImmutableArray<UnitProgram> ClaimantsOf(string equipment) => [.. Units.Where(unit => unit.ClaimedEquipment.Contains(equipment))];

    /// <summary>The units whose steps drive an output that <paramref name="owner"/> shares, and what they must own for it.</summary>
    public IEnumerable<(UnitProgram Unit, string Equipment)> DriversOf(UnitProgram owner, Output output) =>
        from equipment in owner.Shared
        where equipment.Outputs.Any(member => member.Tag == output.Tag)
        from unit in Units
        where unit.DrivenElsewhere.Any(driven => driven.Tag == QualifiedName.Of(owner.Name, output.Tag))
        select (unit, QualifiedName.Of(owner.Name, equipment.Name));

    /// <summary>
    /// What the site calls something that a unit declares. Tags are the plant's and unique on the site; the names of
    /// protections and requirements are the unit's, and carry its name where there are several.
    /// </summary>
    public string NameOf(UnitProgram unit, string name) => Units.Length > 1 ? $"{unit.Name}.{name}" : name;
}
