namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>The repository's demo sites, and the small ones that only tests use, each read and compiled once for all its tests.</summary>
public sealed class DemoSites
{
    private readonly Dictionary<string, DemoSite> _sites = new(StringComparer.Ordinal);

    public static IEnumerable<string> Folders { get; } = ["one-pit", "cyanide-reactor", "sludge-house", "fernhollow", "marlpit-wharf", "sedgemere", "quillgate"];

    internal DemoSite Of(string folder)
    {
        if (!_sites.TryGetValue(folder, out DemoSite? site))
        {
            site = new DemoSite(folder);
            _sites.Add(folder, site);
        }

        return site;
    }
}
