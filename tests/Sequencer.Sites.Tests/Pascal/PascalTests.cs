using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Sites.Tests.Variants.Guided;
using Xunit.Abstractions;

namespace Sequencer.Sites.Tests.Pascal;

/// <summary>
/// The exported text of a site, rewritten to Pascal and compiled by a compiler that is not ours, beside the system: outputs, alarms,
/// steps and variables are equal in every scan. An ordinary run takes a sample; <c>tests/full pascal</c> takes ten million scans of each
/// site, with all its scenarios and the prover's way to each transition that random runs do not find.
/// </summary>
public sealed class PascalTests(ITestOutputHelper report)
{
    private const long SampleScans = 100_000;
    private const long AllScans = 10_000_000;
    private static readonly TimeSpan PatienceForWays = TimeSpan.FromMinutes(20);

    private static bool All => Environment.GetEnvironmentVariable("SEQUENCER_ALL_PASCAL") == "1";

    public static TheoryData<string> Sites => ["one-pit", .. SiteFiles.All.Select(site => site.Folder)];

    [Theory]
    [MemberData(nameof(Sites))]
    public void The_exported_text_does_in_every_scan_what_the_program_does(string folder)
    {
        PascalSite site = new(folder, text => text);
        Assert.Empty(site.Unpaired);
        using PascalRun run = new(site, seed: All ? 2 : 1);
        foreach (InputScript script in Scripts(site.Site))
        {
            run.Play(script);
        }

        long played = run.Scans;
        run.Go(played + (All ? AllScans / 2 : SampleScans));
        ImmutableArray<GoalVerdict> ways = All ? Ways(site, run) : [];
        run.Go(All ? Math.Max(AllScans, run.Scans + (AllScans / 4)) : run.Scans);
        string counts = Counts(site, run, played, ways);
        report.WriteLine($"{folder}: {counts}");
        Assert.True(run.Difference is null, run.Difference);
        Assert.True(run.PowerLosses > 0, counts);
        Assert.True(4 * run.Taken.Count(taken => taken > 0) > run.Taken.Length, counts);
        Assert.All(site.Transitions.Zip(run.Taken).Where(_ => All), pair =>
            Assert.True(pair.Second >= PascalRun.Wanted || ways.Any(way => way.Goal == pair.First && way is not Reached), $"{pair.First.Name}: {pair.Second} times"));
    }

    /// <summary>In each dialect the text is compiled and does the same.</summary>
    [Theory]
    [InlineData(TextEdition.Second, StateForm.Enumerated, null)]
    [InlineData(TextEdition.Third, StateForm.Integer, null)]
    [InlineData(TextEdition.Second, StateForm.Integer, 20)]
    public void So_does_the_text_of_each_dialect(TextEdition edition, StateForm states, int? longestName)
    {
        PascalSite site = new("one-pit", text => text, new TextDialect(edition, states, longestName));
        Assert.Empty(site.Unpaired);
        using PascalRun run = new(site, seed: 3);
        run.Play(Scripts(site.Site).First());
        run.Go(run.Scans + SampleScans);
        Assert.True(run.Difference is null, run.Difference);
        Assert.True(4 * run.Taken.Count(taken => taken > 0) > run.Taken.Length, Counts(site, run, run.Scans, []));
    }

    /// <summary>Each change is one that a reviewer could make; the run must find it.</summary>
    [Theory]
    [InlineData("State_Now := STATE_RESTARTING;", "State_Now := STATE_RUNNING;")]
    [InlineData("PT := T#3s", "PT := T#2900ms")]
    [InlineData("VAR RETAIN", "VAR")]
    [InlineData("Start_Edge AND", "Start_Edge OR")]
    [InlineData(">= 20)", "> 20)")]
    public void A_changed_text_is_found(string words, string others)
    {
        PascalSite site = new("one-pit", text =>
        {
            Assert.Contains(words, text, StringComparison.Ordinal);
            return text.Replace(words, others, StringComparison.Ordinal);
        });
        using PascalRun run = new(site, seed: 1);
        run.Play(Scripts(site.Site).First());
        run.Go(run.Scans + SampleScans);
        Assert.NotNull(run.Difference);
        report.WriteLine(run.Difference);
    }

    private static IEnumerable<InputScript> Scripts(LoadedSite site) => site.Scenarios
        .Where(scenario => All || scenario.Name.StartsWith("normal", StringComparison.Ordinal))
        .Select(scenario => InputScript.Of(site, scenario));

    /// <summary>The prover's ways to transitions that were not taken, each of them played.</summary>
    private static ImmutableArray<GoalVerdict> Ways(PascalSite site, PascalRun run)
    {
        ImmutableArray<Goal> open = [.. site.Transitions.Where((_, place) => run.Taken[place] == 0)];
        using CancellationTokenSource patience = new(PatienceForWays);
        ImmutableArray<GoalVerdict> ways = GoalProver.DecideAll(site.System, open, ProofOptions.Default, null, null, patience.Token);
        foreach (Reached reached in ways.OfType<Reached>())
        {
            run.Play(reached.Way);
        }

        return ways;
    }

    private static string Counts(PascalSite site, PascalRun run, long played, ImmutableArray<GoalVerdict> ways)
    {
        long[] taken = [.. run.Taken.Where(count => count > 0)];
        IEnumerable<string> seldom = site.Transitions.Zip(run.Taken).Where(pair => pair.Second < PascalRun.Wanted).Select(pair =>
            string.Create(CultureInfo.InvariantCulture, $"\n  {pair.First.Name}: {pair.Second} times{Said(ways.FirstOrDefault(way => way.Goal == pair.First))}"));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{run.Scans} scans ({played} of scenarios), {run.PowerLosses} losses of power, {site.Program.Inputs.Length} inputs, {site.Program.Results.Length} values compared, {taken.Length} of {run.Taken.Length} transitions taken, {taken.Count(count => count >= PascalRun.Wanted)} of them at least {PascalRun.Wanted} times, the rarest {taken.DefaultIfEmpty().Min()} times{string.Concat(seldom)}");
    }

    private static string Said(GoalVerdict? way) => way switch
    {
        Unreachable => ", and proved never to be",
        NotFound notFound => $"; {notFound.Words}",
        _ => "",
    };
}
