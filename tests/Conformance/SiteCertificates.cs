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
    /// <summary>What every unit of the site owes without being asked, in place of what its programs ask.</summary>
    private const string OwedAtOnePit = "one-pit, owed";

    private static readonly Dictionary<string, Lazy<SiteCertificates>> Known = new(StringComparer.Ordinal)
    {
        ["one-pit"] = new(() => new SiteCertificates("one-pit")),
        ["fernhollow"] = new(() => new SiteCertificates("fernhollow")),
        ["marlpit-wharf"] = new(() => new SiteCertificates("marlpit-wharf")),
        ["sedgemere"] = new(() => new SiteCertificates("sedgemere")),
        [OwedAtOnePit] = new(() => new SiteCertificates("one-pit", owed: true)),
    };

    private SiteCertificates(string name, bool owed = false)
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
