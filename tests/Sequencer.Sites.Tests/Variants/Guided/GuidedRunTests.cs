using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>The random runs themselves: that they break what is broken, say how, and are the same again.</summary>
public sealed class GuidedRunTests
{
    private const string HotDischarge = "interlock I9: line left out ";

    private static readonly SiteFiles OnePit = new("one-pit", true, 1, int.MaxValue, ["pit.seq"], ["normal batch"]);

    private static readonly Lazy<(LoadedSite Site, CompiledSystem Compiled, ImmutableArray<InputScript> Scripts)> WithoutInterlock = new(() =>
    {
        (string file, Variant variant) = OnePit.Judged.Single(one => one.Variant.Name == HotDischarge);
        LoadedSite site = OnePit.Load(file, variant.Program, new DiagnosticBag()) ?? throw new InvalidOperationException("does not check");
        return (site, GuidedRun.Compile(site.ProofSystem), OnePit.Scripts(OnePit.Load()));
    });

    [Fact]
    public void A_requirement_that_fails_late_in_a_batch_is_broken_and_the_way_there_replays()
    {
        (LoadedSite site, CompiledSystem compiled, ImmutableArray<InputScript> scripts) = WithoutInterlock.Value;
        GuidedResult result = GuidedRun.Run(site, compiled, scripts, seed: 1, scans: 300_000);
        GuidedBreak broken = Assert.Single(result.Broken, one => one.Requirement.Name == "H8");
        Trace told = GuidedRun.Told(site, compiled, scripts, result.Seed, broken.Scan);
        Assert.Equal(told.Scans - 1, TracePlayback.FirstScanWhereFalse(told, compiled.System, broken.Requirement.Holds));
    }

    [Fact]
    public void The_same_seed_gives_the_same_run_and_another_another()
    {
        (LoadedSite site, CompiledSystem compiled, _) = WithoutInterlock.Value;
        Trace first = GuidedRun.Told(site, compiled, [], 1, 5000);
        Assert.Equal(Words(first), Words(GuidedRun.Told(site, compiled, [], 1, 5000)));
        Assert.NotEqual(Words(first), Words(GuidedRun.Told(site, compiled, [], 2, 5000)));

        static string Words(Trace trace) => string.Join('\n', trace.Segments.Select(segment => $"{segment.Scans}: {string.Join(' ', segment.Inputs)}"));
    }

    [Fact]
    public void A_scan_allocates_nothing()
    {
        (LoadedSite site, CompiledSystem compiled, _) = WithoutInterlock.Value;
        Allocated(1000);
        Assert.Equal(Allocated(20_000), Allocated(120_000));

        // The runs are alike, so what a scan allots comes again in each of them; what came only once is not the scan's.
        long Allocated(long scans) => Enumerable.Range(0, 3).Min(_ => Once(scans));

        long Once(long scans)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            GuidedRun.Run(site, compiled, [], 1, scans);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
    }
}
