using System.Collections.Immutable;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>The programs of a demo site that are broken line by line, and what of their variants is judged by random runs.</summary>
/// <param name="Folder">The site's.</param>
/// <param name="Alone">Whether the unit is judged without the others of its site: only where it reads nothing of them.</param>
/// <param name="Share">Of so many variants one is judged.</param>
/// <param name="Most">How many of these at most.</param>
/// <param name="Files">The programs, and the libraries that they use.</param>
/// <param name="Scenarios">The scenarios that a random run goes through first.</param>
internal sealed record SiteFiles(string Folder, bool Alone, int Share, int Most, ImmutableArray<string> Files, ImmutableArray<string> Scenarios)
{
    public static ImmutableArray<SiteFiles> All { get; } =
    [
        new("fernhollow", false, 4, 80, ["services.seq", "line.seq", "pit301.seq", "lib/pit.seqlib"], ["normal batch", "second pit takes over"]),
        new("marlpit-wharf", true, 1, 216, ["reaction.seq"], ["normal batch"]),
        new("sedgemere", false, 8, 57, ["balance.seq", "skid.seq", "line.seq", "tank410.seq", "lib/correction.seqlib"], ["normal batch of both tanks"]),
        new("quillgate", false, 12, 72, ["feed.seq", "reactor.seq", "sludge.seq", "inspection.seq"], ["normal batch"]),
    ];

    public static SiteFiles Of(string folder) => All.Single(site => site.Folder == folder);

    /// <summary>The variants that are judged, with the file that each breaks.</summary>
    public ImmutableArray<(string File, Variant Variant)> Judged => [.. Broken().Where((_, place) => place % Share == 0).Take(Most)];

    /// <summary>How many variants there are, judged or not.</summary>
    public int Possible => Broken().Count();

    /// <summary>The site with a broken program; null, with what the checker says, where it does not pass.</summary>
    public LoadedSite? Load(string file, string program, DiagnosticBag diagnostics)
    {
        using BrokenSite broken = new(Folder, file, program, Alone);
        return SiteLoader.Load(broken.Folder, diagnostics);
    }

    /// <summary>The site as it is, or the unit alone.</summary>
    public LoadedSite Load() => Sound(Load(Files[0], new VariantSite(Folder, Files[0]).Program, new DiagnosticBag()));

    /// <summary>The site as it is.</summary>
    public LoadedSite Whole() => Sound(SiteLoader.Load(new Folders.SiteFolder(RepositoryPath.Site(Folder)), new DiagnosticBag()));

    /// <summary>What the inputs are in the site's scenarios.</summary>
    public ImmutableArray<InputScript> Scripts(LoadedSite site) =>
        [.. Scenarios.Select(name => InputScript.Of(site, site.Scenarios.Single(scenario => scenario.Name == name)))];

    private LoadedSite Sound(LoadedSite? site) => site ?? throw new InvalidOperationException($"{Folder} itself does not check");

    private IEnumerable<(string File, Variant Variant)> Broken() => Files.SelectMany(file => new VariantSite(Folder, file).Variants.Select(variant => (file, variant)));
}
