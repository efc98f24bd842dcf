using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary>Sets of runs as a user plays them: whole, in parts, killed and gone on with.</summary>
public sealed class TrialsTests
{
    private const int Runs = 8;

    private const string Trials = """
        trials: 1
        scenarios: [normal batch]
        tolerances:
          - {quantity: reagents.CAUSTIC.dissolved.sodium, within: 5 %}
          - {quantity: transmitters.AT301.offset, low: -0.1 pH, high: 0.1 pH}
          - {quantity: supplies.lab_drains.pH, within: 0.2}

        """;

    /// <summary>Killed at random moments, in two parts, on one thread and on two: the results are the same to the last bit.</summary>
    [Fact]
    public void Killed_runs_parts_and_threads_give_the_bytes_of_one_run_from_end_to_end()
    {
        bool full = TrialSets.AreFull;
        string runs = full ? "120" : Runs.ToString(System.Globalization.CultureInfo.InvariantCulture);
        using Pit pit = new();
        ToolRun whole = Tried(pit, "whole", runs, "--threads", "1");
        Assert.Contains($"{runs} runs, 0 ended unsafe", whole.Output, StringComparison.Ordinal);

        Random moments = new(20_240_601);
        int kills = full ? 20 : 3;
        for (int kill = 1; kill <= kills; kill++)
        {
            TrialSets.KillWhenSomeRunsAreDone(pit.At("killed"), Arguments(pit, "killed", runs), kill * int.Parse(runs, System.Globalization.CultureInfo.InvariantCulture) / (kills + 2), moments.Next(0, 400));
        }

        _ = Tried(pit, "killed", runs);
        TrialSets.HaveTheSameResults(pit.At("whole"), pit.At("killed"));

        Assert.Equal(2, ToolRun.Of(Arguments(pit, "parts", runs, "--merge")).ExitCode);
        Assert.Equal(0, ToolRun.Of(Arguments(pit, "parts", runs, "--shard", "2/2")).ExitCode);
        Assert.Equal(0, ToolRun.Of(Arguments(pit, "parts", runs, "--shard", "1/2")).ExitCode);
        _ = Tried(pit, "parts", runs, "--merge");
        TrialSets.HaveTheSameFiles(pit.At("whole"), pit.At("parts"));

        ToolRun other = ToolRun.Of(Arguments(pit, "whole", runs, "--seed", "2"));
        Assert.Equal(2, other.ExitCode);
        Assert.Contains("another trial set", other.Error, StringComparison.Ordinal);

        string worst = Path.Combine(pit.At("whole"), "worst");
        string file = Directory.EnumerateFiles(worst).Order(StringComparer.Ordinal).First();
        Directory.CreateDirectory(Path.Combine(pit.Site, "scenarios"));
        File.Copy(file, Path.Combine(pit.Site, "scenarios", "worst.yaml"));
        ToolRun again = ToolRun.Of("simulate", pit.Site, "--scenario", $"run {Path.GetFileNameWithoutExtension(file)["run-".Length..]}", "--out", pit.At("again"));
        Assert.True(again.ExitCode == 0, again.Everything);
    }

    /// <summary>What ends safe but not as expected is not called a failure of something.</summary>
    [Fact]
    public void Runs_that_are_safe_but_not_as_expected_are_told_so()
    {
        using Pit pit = new();
        string scenario = Path.Combine(pit.Site, "scenarios", "normal.yaml");
        File.WriteAllText(scenario, File.ReadAllText(scenario).Replace("ends: Complete}", "ends: Held}", StringComparison.Ordinal));
        ToolRun run = ToolRun.Of(Arguments(pit, "out", "1"));
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("NO RUN ENDED UNSAFE, BUT 1 OF 1 NOT AS THE SCENARIO EXPECTS", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--faults: `all` is not known here; write none or each or pairs", "--faults", "all")]
    [InlineData("--shard: `3/2` is no part of a whole", "--shard", "3/2")]
    [InlineData("--merge puts all parts together: leave --shard away", "--merge", "--shard", "1/2", "--runs", "5")]
    [InlineData("the site has no file `trials.yaml` that says what is uncertain")]
    public void What_cannot_be_tried_is_told_and_ends_with_2(string expected, params string[] arguments)
    {
        using Pit pit = new();
        File.Delete(Path.Combine(pit.Site, "trials.yaml"));
        ToolRun run = ToolRun.Of(["trials", pit.Site, "--out", pit.At("out"), .. arguments]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(pit.At("out")));
    }

    private static string[] Arguments(Pit pit, string results, string runs, params string[] more) =>
        ["trials", pit.Site, "--runs", runs, "--out", pit.At(results), .. more];

    private static ToolRun Tried(Pit pit, string results, string runs, params string[] more)
    {
        ToolRun run = ToolRun.Of(Arguments(pit, results, runs, more));
        Assert.True(run.ExitCode == 0, run.Everything);
        return run;
    }

    /// <summary>A copy of the small site, with trials whose expectations a tolerance does not break.</summary>
    private sealed class Pit : IDisposable
    {
        private readonly string _folder = Directory.CreateTempSubdirectory("trials-").FullName;

        public Pit()
        {
            Directory.CreateDirectory(Path.Combine(Site, "scenarios"));
            foreach (string file in Directory.EnumerateFiles(RepositoryPath.Site("one-pit")))
            {
                File.Copy(file, Path.Combine(Site, Path.GetFileName(file)));
            }

            File.WriteAllText(Path.Combine(Site, "trials.yaml"), Trials);
            File.WriteAllText(
                Path.Combine(Site, "scenarios", "normal.yaml"),
                "scenario: 1\nname: normal batch\nlasts: 4 h\nuntil: {unit: TK301, state: Complete}\nplant:\n  tanks.TK301.starts.volume: 0.45 m3\nactions:\n  - {at: 5 s, press: TK301.start}\nexpect:\n  - {unit: TK301, ends: Complete}\n");
        }

        public string Site => At("pit");

        public string At(string name) => Path.Combine(_folder, name);

        public void Dispose() => Directory.Delete(_folder, recursive: true);
    }
}
