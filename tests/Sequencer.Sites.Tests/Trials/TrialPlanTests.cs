using Sequencer.Simulation.Records;
using Sequencer.Simulation.Running;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Tests.Recipes;
using Sequencer.Sites.Trials;

namespace Sequencer.Sites.Tests.Trials;

/// <summary>What each run of a set has.</summary>
public sealed class TrialPlanTests : IDisposable
{
    /// <summary>Of a part: a drawn value has six figures.</summary>
    private const double Rounding = 1e-2;

    private readonly SiteWithFiles _files = new SiteWithFiles("one-pit").With(TrialSite.Files);
    private readonly LoadedSite _site;

    public TrialPlanTests() => _site = TrialSite.Load(_files);

    private SiteTrials Trials => TrialSite.TrialsOf(_site);

    public void Dispose() => _files.Dispose();

    [Theory]
    [InlineData(1, 1)]
    [InlineData(7, 1)]
    [InlineData(60, 5)]
    public void Each_part_of_a_tolerance_is_drawn_once(int runs, int seed)
    {
        TrialPlan plan = new(Trials, new TrialSettings { Runs = runs, Seed = (ulong)seed }, []);
        Assert.Equal(runs, plan.Runs);
        for (int tolerance = 0; tolerance < Trials.Tolerances.Length; tolerance++)
        {
            Tolerance drawn = Trials.Tolerances[tolerance];
            double[] places = [.. Enumerable.Range(1, runs).Select(run => (plan.Draw(run).Tolerances[tolerance] - drawn.Low) / (drawn.High - drawn.Low) * runs).Order()];
            for (int part = 0; part < runs; part++)
            {
                Assert.InRange(places[part], part - Rounding, part + 1 + Rounding);
            }
        }
    }

    [Fact]
    public void A_tolerance_reaches_from_its_low_to_its_high_end()
    {
        Assert.Equal((2.77 * 0.95, 2.77 * 1.05, "mol/L"), (Trials.Tolerances[0].Low, Trials.Tolerances[0].High, Trials.Tolerances[0].Unit));
        Assert.Equal((11.0, 13.0, "L/h"), (Trials.Tolerances[1].Low, Trials.Tolerances[1].High, Trials.Tolerances[1].Unit));
        Assert.Equal((-0.1, 0.1, "pH"), (Trials.Tolerances[2].Low, Trials.Tolerances[2].High, Trials.Tolerances[2].Unit));
        Assert.Equal((1.8, 2.2, ""), (Trials.Tolerances[3].Low, Trials.Tolerances[3].High, Trials.Tolerances[3].Unit));
    }

    [Fact]
    public void A_run_is_the_same_whichever_runs_were_drawn_before_and_another_with_another_seed()
    {
        TrialPlan plan = new(Trials, new TrialSettings { Runs = 20 }, []);
        TrialPlan again = new(Trials, new TrialSettings { Runs = 20 }, []);
        _ = again.Draw(3);
        Assert.Equal(plan.Draw(11).Tolerances.AsEnumerable(), again.Draw(11).Tolerances);
        Assert.Equal(plan.Draw(11).Scenario.Seed, again.Draw(11).Scenario.Seed);
        TrialPlan other = new(Trials, new TrialSettings { Runs = 20, Seed = 2 }, []);
        Assert.NotEqual(plan.Draw(11).Tolerances.AsEnumerable(), other.Draw(11).Tolerances);
    }

    [Fact]
    public void Each_fault_comes_alone_first_on_the_plant_as_described_while_its_piece_is_at_work()
    {
        ScenarioResult result = new TrialExecution(_site, Trials, new Progress<StageProgress>()).Base(0, CancellationToken.None);
        FaultWindows windows = new(_site.Plant, result.Record);
        TrialPlan plan = new(Trials, new TrialSettings { Runs = 2, Faults = TrialFaults.Each }, [windows]);
        int faults = Trials.Faults.Length;
        Assert.True(faults > 40, "too few faults were found");
        Assert.Equal(2 * faults, plan.Runs);
        Assert.Equal(Trials.Faults, Enumerable.Range(1, faults).Select(run => Assert.Single(plan.Draw(run).Faults).Fault));
        Assert.All(Enumerable.Range(1, faults), run => Assert.Empty(plan.Draw(run).Scenario.PlantChanges));
        Assert.All(Enumerable.Range(faults + 1, faults), run => Assert.Equal(Trials.Tolerances.Length, plan.Draw(run).Scenario.PlantChanges.Length));
        OutputTally pump = result.Record.Outputs.Single(output => output.Output == "P304");
        foreach (double share in (double[])[0, 0.3, 0.99])
        {
            double moment = windows.Moment("P304.no-flow", share);
            Assert.Contains(pump.OnTimes, time => moment >= result.Record.SecondsAt(time.From) - 0.1 && moment < result.Record.SecondsAt(time.To));
            Assert.Equal(moment, windows.Moment("YS304.wire-break", share));
            Assert.Equal(moment, windows.Moment("CAUSTIC.empty", share));
        }

        Assert.InRange(windows.Moment("AT301.frozen", 0.5), 0.49 * result.Record.Seconds, 0.51 * result.Record.Seconds);
    }

    [Fact]
    public void Every_pair_comes_once_where_all_are_asked_for()
    {
        ScenarioResult result = new TrialExecution(_site, Trials, new Progress<StageProgress>()).Base(0, CancellationToken.None);
        TrialPlan plan = new(Trials, new TrialSettings { Runs = 1_000_000, Faults = TrialFaults.Pairs }, [new FaultWindows(_site.Plant, result.Record)]);
        Assert.Equal(Trials.Faults.Length * (Trials.Faults.Length - 1) / 2, plan.Runs);
        HashSet<string> pairs = [.. Enumerable.Range(1, plan.Runs).Select(run => string.Join(' ', plan.Draw(run).Faults.Select(fault => fault.Fault).Order(StringComparer.Ordinal)))];
        Assert.Equal(plan.Runs, pairs.Count);
        Assert.DoesNotContain(pairs, pair => pair.Split(' ')[0] == pair.Split(' ')[1]);
    }
}
