using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Proposing;
using Sequencer.Sites.Stages;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Proposing;

/// <summary>Mends that are proposed for a small site with a barrier left out, worked out by hand, and one that there cannot be.</summary>
public sealed class ProposalTests
{
    private const string Filling = "interlock I3 \"Not while filling\"    XV2  blocked while XV1\n";

    [Fact]
    public void An_interlock_that_was_left_out_comes_back()
    {
        using NewPit pit = new((Filling, ""), ("never XV1 and XV2", "never XV2 and XV1"));
        SiteResult result = Propose(pit);
        Assert.Equal(Outcome.Fails, result.Outcome);
        Assert.Contains("+interlock I3 \"Filled and emptied\"   XV2  blocked while XV1", result.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Filled and emptied\"   XV2", File.ReadAllText(pit.Program), StringComparison.Ordinal);
        GoldenFile.Matches(Page(pit), "left-out-interlock.verified.md");

        // The same interlock but for its title: the meaning of the mended program is that of the unbroken one.
        using NewPit mended = new((Filling, Filling.Replace("Not while filling", "Filled and emptied", StringComparison.Ordinal)), ("never XV1 and XV2", "never XV2 and XV1"));
        File.WriteAllText(pit.Program, File.ReadAllText(pit.Program).Replace("\ntrip T1", "interlock I3 \"Filled and emptied\" XV2 blocked while XV1\n\ntrip T1", StringComparison.Ordinal));
        Assert.Equal(Meaning(mended), Meaning(pit));
    }

    [Fact]
    public void A_way_that_is_taken_too_early_gets_a_further_condition()
    {
        using NewPit pit = new(
            ("-- protection", "latch TURNED \"Mixed long enough\" set when YS1 stays 90 s clear when at step 10 retained\n\n-- protection"),
            ("after power loss held", "require H6 \"Emptied unmixed\" never at step 30 and not TURNED\n\nafter power loss held"));
        WithHazard(pit, "H6");
        SiteResult result = Propose(pit);
        Assert.Contains("+    go 30 when TURNED and AT1 within end_pH .. 10.00 stays 60 s after the last pulse", result.Text, StringComparison.Ordinal);
        GoldenFile.Matches(Page(pit), "way-taken-too-early.verified.md");
    }

    /// <summary>Whoever fills a pit that may not be filled has no batch; nothing is proposed that the normal batch does not live with.</summary>
    [Fact]
    public void What_the_normal_batch_needs_is_not_forbidden()
    {
        using NewPit pit = new(("after power loss held", "require H6 \"Never filled\" never XV1 and LT1 < 0.500 m3\n\nafter power loss held"));
        WithHazard(pit, "H6");
        SiteResult result = Propose(pit);
        JsonNode mend = JsonNode.Parse(result.Json)!["mends"]!["detail"]![0]!;
        Assert.False((bool)mend["proved"]!);
        Assert.Contains(mend["refused"]!.AsArray(), one => ((string)one!["objection"]!).Contains("normal batch", StringComparison.Ordinal));
        GoldenFile.Matches(Page(pit), "nothing-to-propose.verified.md");
    }

    [Fact]
    public void Nothing_is_proposed_where_nothing_fails()
    {
        using NewPit pit = new();
        SiteResult result = Propose(pit);
        Assert.Equal(Outcome.Holds, result.Outcome);
        Assert.Empty(JsonNode.Parse(result.Json)!["mends"]!["detail"]!.AsArray());
    }

    /// <summary>A run of the command that is out of time says so and keeps what it has.</summary>
    [Fact]
    public void Out_of_time_nothing_is_claimed()
    {
        using NewPit pit = new((Filling, ""));
        LoadedSite site = SiteLoader.Load(new SiteFolder(pit.Folder), new DiagnosticBag())!;
        Requirement filled = site.System.Requirements.Single(requirement => requirement.Name == "H3");
        ImmutableArray<Verdict> verdicts = [Prover.Decide(site.System, filled, ProofOptions.Default, null, CancellationToken.None)];
        using CancellationTokenSource spent = new();
        spent.Cancel();
        Baseline baseline = new(site, verdicts, [], ProofSettings.Default, new Silence(), spent.Token);
        Proposal proposal = new MendSearch(site, new MendedSites(site), baseline, new Silence(), spent.Token).For(BrokenRequirement.Of(site, verdicts).Single(), 0);
        Assert.Null(proposal.Candidate);
        Assert.True(proposal.Tried.IsCutShort);
    }

    private static void WithHazard(NewPit pit, string requirement)
    {
        string description = Path.Combine(pit.Folder, "site.yaml");
        File.AppendAllText(description, $"  - {{id: HZ7, text: Another, met_by: [{requirement}]}}\n");
    }

    private static SiteResult Propose(NewPit pit) => SiteCommands.Prove(
        pit.Folder, pit.Folder + "-out", ProofSettings.Default with { Propose = true }, new Silence(), CancellationToken.None);

    private static string Page(NewPit pit) => File.ReadAllText(Path.Combine(pit.Folder + "-out", "mends.md"));

    private static string Meaning(NewPit pit) =>
        (string)JsonNode.Parse(SiteCommands.Check(pit.Folder).Json)!["meaning"]!;

    private sealed class Silence : IProgress<StageProgress>
    {
        public void Report(StageProgress value)
        {
        }
    }
}
