using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Sites;
using Sequencer.Sites.Descriptions;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Conformance.Tests;

/// <summary>
/// The certificates of a demo site as its user gets them on disk, and its system made anew from the source.
/// </summary>
internal sealed class SiteCertificates
{
    /// <summary>Behind a site's name: what every unit of it owes without being asked, in place of what its programs ask.</summary>
    private const string Owed = ", owed";

    private static readonly ImmutableSortedDictionary<string, Lazy<SiteCertificates>> Known = Names().ToImmutableSortedDictionary(
        name => name, name => new Lazy<SiteCertificates>(() => new SiteCertificates(name.Replace(Owed, "", StringComparison.Ordinal), name.EndsWith(Owed, StringComparison.Ordinal))), StringComparer.Ordinal);

    /// <summary>Every certificate that a user of the demo sites can get is looked at, which takes long; else most of them.</summary>
    public static bool AreAll => Environment.GetEnvironmentVariable("SEQUENCER_ALL_CERTIFICATES") is not null;

    private SiteCertificates(string name, bool owed)
    {
        string site = RepositoryPath.Site(name);
        DirectoryInfo results = Directory.CreateTempSubdirectory("sequencer-test-");
        try
        {
            SiteResult proof = SiteCommands.Prove(site, results.FullName, ProofSettings.Default with { Obligations = owed }, new Silence(), CancellationToken.None);
            Assert.True(proof.Outcome == Outcome.Holds, proof.Text);
            Texts = Directory.EnumerateFiles(Path.Combine(results.FullName, "certificates"))
                .ToImmutableSortedDictionary(file => Path.GetFileNameWithoutExtension(file), File.ReadAllText, StringComparer.Ordinal);
            System = Lower(site, owed);
            Requirements = [.. System.Requirements.Where(requirement => owed == requirement.Obligation is not null)];
            Texts = Texts.RemoveRange(Texts.Keys.Where(name => owed && Requirements.All(requirement => requirement.Name != name)));
        }
        finally
        {
            results.Delete(recursive: true);
        }
    }

    public static IEnumerable<string> SiteNames => Known.Keys;

    public static SiteCertificates Of(string site) => Known[site].Value;

    public ImmutableSortedDictionary<string, string> Texts { get; }

    public TransitionSystem System { get; }

    /// <summary>The requirements of the system that the certificates are about.</summary>
    public ImmutableArray<Requirement> Requirements { get; }

    private static IEnumerable<string> Names()
    {
        string[] sites = ["fernhollow", "marlpit-wharf", "sedgemere"];
        return AreAll
            ? [.. new[] { "one-pit", "quillgate" }.Concat(sites).SelectMany(site => new[] { site, site + Owed })]
            : ["one-pit", "one-pit" + Owed, .. sites];
    }

    private static TransitionSystem Lower(string site, bool owed)
    {
        DiagnosticBag diagnostics = new();
        SiteFolder folder = new(site);
        SourceSpan nowhere = new SourceText(site, "").Whole;
        SiteDescription description = SiteDescriptionReader.Read(Read(folder, "site.yaml", nowhere, diagnostics), diagnostics)
            ?? throw new InvalidOperationException($"{site} has no description");
        SiteCheckResult result = SiteChecker.Check(
            [.. description.Programs.Select(file => Read(folder, file.Name, nowhere, diagnostics))],
            description.ScanMilliseconds,
            libraries: folder.Read);
        ImmutableArray<UnitProgram> units = result.Units.Length == description.Programs.Length
            ? result.Units
            : throw new InvalidOperationException($"{site} does not check");
        SiteProgram program = new(description.Name, description.ScanMilliseconds, units);
        return owed ? SiteLowering.LowerWithObligations(program) : SiteLowering.Lower(program);
    }

    private static SourceText Read(SiteFolder folder, string name, SourceSpan nowhere, DiagnosticBag diagnostics) =>
        folder.Read(name, nowhere, diagnostics) ?? throw new InvalidOperationException($"{name} cannot be read");

    private sealed class Silence : IProgress<StageProgress>
    {
        public void Report(StageProgress value)
        {
        }
    }
}
