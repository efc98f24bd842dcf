namespace Sequencer.Language.Binding;

/// <summary>The units of a site by name: where one unit finds what another publishes.</summary>
internal sealed class SiteNames
{
    private readonly Dictionary<string, UnitNames> _units = new(StringComparer.Ordinal);

    /// <summary>A file could not be read as a program: a unit that is not there may be its.</summary>
    public bool UnitsMayBeMissing { get; set; }

    public IEnumerable<string> Names => _units.Keys;

    /// <summary>The first of two units of one name counts; that there are two is told elsewhere.</summary>
    public void Add(UnitNames unit) => _units.TryAdd(unit.Name, unit);

    public UnitNames? Find(string name) => _units.GetValueOrDefault(name);
}
