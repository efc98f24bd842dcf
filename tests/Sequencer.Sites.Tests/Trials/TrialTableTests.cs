using System.Collections.Immutable;
using Parquet;
using Parquet.Schema;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Tests.Recipes;
using Sequencer.Sites.Trials;

namespace Sequencer.Sites.Tests.Trials;

public sealed class TrialTableTests
{
    [Fact]
    public async Task A_row_a_run_and_the_same_bytes_each_time()
    {
        using SiteWithFiles files = new SiteWithFiles("one-pit").With(TrialSite.Files);
        LoadedSite site = TrialSite.Load(files);
        SiteTrials trials = TrialSite.TrialsOf(site);
        TrialSettings settings = new() { Runs = 2 };
        TrialExecution execution = new(site, trials, new Progress<StageProgress>());
        ScenarioResult result = execution.Base(0, CancellationToken.None);
        ImmutableArray<FaultWindows> windows = [new FaultWindows(site.Plant, result.Record)];
        TrialPlan plan = new(trials, settings, windows);
        Dictionary<int, RunSummary> runs = [];
        execution.Play(plan, windows, [1, 2], 1, (run, summary) => runs[run] = summary, CancellationToken.None);
        TrialSet set = new(site, trials, settings, plan, [runs[1], runs[2] with { BatchSeconds = double.NaN }], [result], [execution.BaseSummary(0, CancellationToken.None)]);

        byte[] table = TrialTable.Write(set);
        Assert.Equal(table, TrialTable.Write(set));
        using MemoryStream stream = new(table);
        await using ParquetReader reader = await ParquetReader.CreateAsync(stream);
        Assert.Equal(
            ["run", "scenario", "recipe", "with reagents.CAUSTIC.dissolved.sodium [mol/L]", "with lines.caustic.rate [L/h]", "with transmitters.AT301.offset [pH]", "with supplies.lab_drains.pH", "end", "seconds", "batch_s"],
            reader.Schema.GetDataFields().Take(10).Select(field => field.Name));
        using ParquetRowGroupReader group = reader.OpenRowGroupReader(0);
        Assert.Equal(2, group.RowCount);
        Assert.Equal([plan.Draw(1).Tolerances[0], plan.Draw(2).Tolerances[0]], await Numbers("with reagents.CAUSTIC.dissolved.sodium [mol/L]"));
        Assert.Equal([runs[1].BatchSeconds, null], await Numbers("batch_s"));
        Assert.Equal([runs[1].Values[1], runs[2].Values[1]], await Numbers("CAUSTIC.used [L]"));

        async Task<double?[]> Numbers(string name)
        {
            DataField field = reader.Schema.GetDataFields().Single(candidate => candidate.Name == name);
            double?[] values = new double?[2];
            await group.ReadAsync<double>(field, values.AsMemory());
            return values;
        }
    }
}
