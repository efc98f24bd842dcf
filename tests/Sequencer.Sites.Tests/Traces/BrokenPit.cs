using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Tests.Recipes;
using Sequencer.Sites.Traces;
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

    public static SiteWithFiles Copy(string site, string file, string before, string after)
    {
        SiteWithFiles copy = new(site);
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
