using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Tests.Recipes;
using Sequencer.Sites.Traces;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Traces;

/// <summary>A site with words of one of its programs replaced, and a requirement of it that fails then.</summary>
internal static class BrokenPit
{
    public static LoadedSite Load(string site, string file, string before, string after)
    {
        using SiteWithFiles copy = Copy(site, file, before, after);
        DiagnosticBag diagnostics = new();
        LoadedSite? loaded = SiteLoader.Load(new SiteFolder(copy.Folder), diagnostics);
        Assert.False(diagnostics.HasErrors, string.Join('\n', diagnostics.InOrder().Select(one => $"{one.Code} {one.Message}")));
        return loaded ?? throw new InvalidOperationException("no site without a mistake");
    }

    /// <summary>
    /// A hot pit that is filled, corrected and let out, on the small site without its interlock against hot discharge: 3455 scans
    /// through six steps. Given and not searched, so that a test of how it is told does not depend on what a search finds.
    /// </summary>
    public static (LoadedSite Site, FailingRun Run) HotDischarge()
    {
        LoadedSite site = Load(
            "one-pit", "pit.seq", "interlock I9 \"No hot discharge\"                   XV321, P320A  blocked from TT301 > 40.0 degC until TT301 < 38.0 degC\n", "");
        Requirement broken = site.System.Requirements.Single(one => one.Name == "H8");
        ImmutableArray<TraceInput> inputs = TraceInputs.Of(site.System, site.Metadata);
        ImmutableArray<TraceSegment> segments =
        [
            Segment(1, ("LSH301.contact", 0), ("LSL301.contact", 0)),
            Segment(1, ("LSH301.contact", 0), ("TK301.start", 1)),
            Segment(3453, ("LSH301.contact", 0), ("YS301.contact", 1), ("ZSC300.contact", 1), ("ZSC321.contact", 1), ("TT301", 512)),
        ];
        return (site, FailingRun.Of(site, site.System, TraceEnd.Broken(broken), broken, new Trace(segments), isShortest: false, CancellationToken.None));

        TraceSegment Segment(int scans, params (string Input, long Value)[] away) => new(
            [.. inputs.Select(input => away.Where(one => one.Input == input.Name).Select(one => one.Value).DefaultIfEmpty(input.Rest).Single())], scans);
    }

    private static SiteWithFiles Copy(string site, string file, string before, string after)
    {
        SiteWithFiles copy = new(site);
        foreach (string library in Directory.EnumerateFiles(RepositoryPath.Site(site), "*.seqlib", SearchOption.AllDirectories))
        {
            string place = copy.At(Path.GetRelativePath(RepositoryPath.Site(site), library));
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            File.Copy(library, place);
        }

        string program = File.ReadAllText(copy.At(file));
        Assert.Contains(before, program, StringComparison.Ordinal);
        File.WriteAllText(copy.At(file), program.Replace(before, after, StringComparison.Ordinal));
        return copy;
    }

    public static FailingRun Run(LoadedSite site, string requirement)
    {
        Requirement broken = site.System.Requirements.Single(one => one.Name == requirement);
        Fails fails = Assert.IsType<Fails>(Prover.Decide(site.System, broken, ProofOptions.Default, null, CancellationToken.None));
        return FailingRun.Of(site, broken, fails, CancellationToken.None);
    }
}
