namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>The repository's demo sites, each read and compiled once for all its tests.</summary>
public sealed class DemoSites
{
    private static readonly Dictionary<string, string> Programs = new(StringComparer.Ordinal)
    {
        ["fernhollow"] = "pit.seq",
        ["marlpit-wharf"] = "reaction.seq",
    };

    private readonly Dictionary<string, DemoSite> _sites = new(StringComparer.Ordinal);

    public static IEnumerable<string> Folders => Programs.Keys;

    internal DemoSite Of(string folder)
    {
        if (!_sites.TryGetValue(folder, out DemoSite? site))
        {
            site = new DemoSite(folder, Programs[folder]);
            _sites.Add(folder, site);
        }

        return site;
    }
}
