using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary>Pairs of faults on a site with more reagents and another chemistry, and what becomes of the set when it is killed.</summary>
public sealed class PairTrialsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pairs-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Killed in the middle of its results, in the long tier at random moments too: gone on with, the results are the same to the last bit.</summary>
    [Fact]
    public void Pairs_of_faults_killed_while_they_run_or_are_written_come_out_the_same()
    {
        (int runs, int kills) = TrialSets.AreFull ? (120, 10) : (2, 0);
        Finished("whole", runs);
        string page = File.ReadAllText(Path.Combine(At("whole"), "trials.md"));
        Assert.Contains($"pairs of faults, {runs} of ", page, StringComparison.Ordinal);

        Random moments = new(20_261_130);
        for (int kill = 1; kill <= kills; kill++)
        {
            TrialSets.KillWhenSomeRunsAreDone(At("killed"), Arguments("killed", runs), kill * runs / (kills + 2), moments.Next(0, 300));
        }

        Directory.CreateDirectory(At("killed"));
        foreach (string file in TrialSets.AreFull ? ["distributions.svg", "trials.md", "runs.parquet"] : new[] { "runs.parquet" })
        {
            TrialSets.KillWhileWriting(Path.Combine(At("killed"), file), Arguments("killed", runs));
        }

        Finished("killed", runs);
        TrialSets.HaveTheSameResults(At("whole"), At("killed"));
    }

    private void Finished(string results, int runs)
    {
        ToolRun run = ToolRun.Of(Arguments(results, runs));
        Assert.True(run.ExitCode is 0 or 1, run.Everything);
        Assert.Contains($"{runs} runs, ", run.Output, StringComparison.Ordinal);
    }

    private string[] Arguments(string results, int runs) =>
        ["trials", RepositoryPath.Site("cyanide-reactor"), "--faults", "pairs", "--runs", runs.ToString(System.Globalization.CultureInfo.InvariantCulture), "--out", At(results)];

    private string At(string name) => Path.Combine(_folder, name);
}
