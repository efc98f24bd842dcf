using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary>
/// <c>sequencer tune</c>: on the record of the small site's own normal batch, on records of the demo sites' normal batches (<c>Trends/</c>: run.csv of <c>simulate</c>, the
/// columns of the doses), and on trends that say little or cannot be used.
/// </summary>
public sealed class TuneTests
{
    private static readonly string OnePit = RepositoryPath.Site("one-pit");

    [Fact]
    public void A_run_record_gives_dead_time_lag_and_a_change_to_review()
    {
        using ScratchSite site = new();
        ToolRun played = ToolRun.Of("simulate", OnePit, "--scenario", "normal-batch", "--out", site.Beside("run"));
        Assert.True(played.ExitCode == 0, played.Everything);
        ToolRun tuned = ToolRun.Of("tune", OnePit, Path.Combine(site.Beside("run"), "run.csv"), "--out", site.Beside("tuned"));
        Assert.True(tuned.ExitCode == 3, tuned.Everything);
        GoldenFile.Matches(Said(tuned.Output), "tune-one-pit.verified.txt");
        Assert.Equal(2, Directory.EnumerateFiles(site.Beside("tuned"), "*.png").Count());
        string changes = File.ReadAllText(Path.Combine(site.Beside("tuned"), "proposed.diff"));
        Assert.StartsWith("For review: prove the site again (sequencer verify)", changes, StringComparison.Ordinal);
    }

    /// <summary>Quillgate: five doses, each fitted in its own step; what three of them left open is proposed nowhere. Fernhollow: two well-determined doses.</summary>
    [Theory]
    [InlineData("quillgate")]
    [InlineData("fernhollow")]
    public void Each_step_is_judged_by_its_own_pulses(string name)
    {
        ToolRun tuned = ToolRun.Of("tune", RepositoryPath.At("sequences", name), Trend(name));
        Assert.True(tuned.ExitCode == 3, tuned.Everything);
        GoldenFile.Matches(Said(tuned.Output), $"tune-{name}.verified.txt");
    }

    /// <summary>Steps 30 (its wait is determined) and 62 (its wait is not) with limits that the recorded doses hardly fit into: both rest on the program's own wait.</summary>
    [Fact]
    public void A_longer_limit_is_marked_as_weaker_and_never_rests_on_a_wait_that_is_not_determined()
    {
        using ScratchSite scratch = new();
        string site = scratch.Beside("quillgate");
        foreach (string file in Directory.EnumerateFiles(RepositoryPath.At("sequences", "quillgate"), "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(site, Path.GetRelativePath(RepositoryPath.At("sequences", "quillgate"), file));
            Directory.CreateDirectory(Path.GetDirectoryName(target) ?? site);
            File.Copy(file, target);
        }

        string program = Path.Combine(site, "reactor.seq");
        string text = File.ReadAllText(program);
        string shorter = WithLimit(WithLimit(text, "\n  step 30 ", "20 min"), "\n  step 62 ", "15 min");
        File.WriteAllText(program, shorter);
        ToolRun tuned = ToolRun.Of("tune", site, Trend("quillgate"), "--json");
        Assert.True(tuned.ExitCode == 3, tuned.Everything);
        JsonObject detail = tuned.Json["tune"]!["detail"]!.AsObject();
        JsonObject[] limits = [.. Settings(detail).Where(setting => (string)setting["setting"]! == "limit of the step" && (string)setting["verdict"]! == "change")];
        Assert.Equal(["20 min -> 30 min", "15 min -> 25 min"], limits.Select(limit => $"{limit["now"]} -> {limit["proposed"]}"));
        Assert.All(limits, limit => Assert.Contains("with the program's wait of 1 min", (string)limit["reason"]!, StringComparison.Ordinal));
        Assert.All(limits, limit => Assert.Contains("review what the step does at its limit", (string)limit["weakens_a_protection"]!, StringComparison.Ordinal));
        string changes = (string)detail["diff"]!;
        Assert.Contains("limit of the step 15 min -> 25 min weakens a protection", changes, StringComparison.Ordinal);
        Assert.Contains("+    limit 25 min then hold", changes, StringComparison.Ordinal);
    }

    [Fact]
    public void What_rests_on_something_not_determined_has_no_proposal_and_no_range()
    {
        ToolRun tuned = ToolRun.Of("tune", RepositoryPath.At("sequences", "quillgate"), Trend("quillgate"), "--json");
        Assert.Equal("Undecided", (string)tuned.Json["outcome"]!);
        JsonObject[] doses = [.. tuned.Json["tune"]!["detail"]!["doses"]!.AsArray().Select(dose => dose!.AsObject())];
        Assert.Contains(doses, dose => ((string)dose["not_determined"]!).Length > 0);
        foreach (JsonObject dose in doses)
        {
            bool determined = (bool)dose["dead_time_determined"]! && (bool)dose["lag_determined"]!;
            Assert.True(determined || ((string)dose["not_determined"]!).Length > 0);
            foreach (JsonObject setting in dose["settings"]!.AsArray().Select(setting => setting!.AsObject()))
            {
                Assert.Equal((string)setting["verdict"]! == "change", setting["proposed"] is not null);
                Assert.True(((string)dose["not_determined"]!).Length == 0 || setting["range"] is null);
                Assert.True(((string)dose["not_determined"]!).Length == 0 || (string)setting["verdict"]! == "undecided" || (string)setting["setting"]! == "limit of the step");
            }
        }
    }

    [Fact]
    public void Without_the_active_steps_pulses_of_several_steps_are_not_thrown_together()
    {
        using ScratchSite site = new();
        string file = site.Beside("trend.csv");
        File.WriteAllLines(file, File.ReadAllLines(Trend("quillgate")).Select(line => string.Join(',', line.Split(',').Where((_, column) => column != 1))));
        ToolRun run = ToolRun.Of("tune", RepositoryPath.At("sequences", "quillgate"), file);
        Assert.Equal(3, run.ExitCode);
        Assert.Contains("THE TREND SAYS NOTHING OF ANY DOSE", run.Output, StringComparison.Ordinal);
        Assert.Contains("TK101 step 30: P102 toward AT101: nothing in the trend: several steps run P102, and without a column TK101.steps", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(" -> ", run.Output, StringComparison.Ordinal);
    }

    /// <summary>A dead time of 8 s and a lag of 9 s, made here: 95 % of a pulse shows 33 s after it, and everything in step 40 fits.</summary>
    [Fact]
    public void A_trend_that_everything_fits_says_so()
    {
        using ScratchSite site = new();
        string file = site.Beside("trend.csv");
        File.WriteAllText(file, Made(deadSeconds: 8, lagSeconds: 9.0, pulseSeconds: 5, everySeconds: 50, pulses: 12, eachMoves: 0.20));
        ToolRun run = ToolRun.Of("tune", OnePit, file);
        Assert.True(run.ExitCode == 0, run.Everything);
        Assert.Contains("ALL SETTINGS FIT THE TREND; NOTHING WAS CHANGED OR PROVED", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"dead time [78]\.\d s \(standard error [01]\.\d\), lag (8|9|10)\.\d s", run.Output);
        Assert.Contains("prove the site again (sequencer verify) before it goes into a controller", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("AT1 pH\n7\n", "SEQ0860")]
    [InlineData("time s,AT1 pH\n0,7\n0,7\n", "SEQ0862")]
    public void A_trend_that_cannot_be_read_is_told_with_its_place(string text, string code)
    {
        using ScratchSite site = new();
        string file = site.Beside("trend.csv");
        File.WriteAllText(file, text);
        ToolRun run = ToolRun.Of("tune", OnePit, file, "--out", site.Beside("tuned"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(code, run.Error, StringComparison.Ordinal);
        Assert.Contains("trend.csv:", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(site.Beside("tuned")));
    }

    [Fact]
    public void A_trend_without_the_columns_of_a_dose_leaves_it_undecided()
    {
        using ScratchSite site = new();
        string file = site.Beside("trend.csv");
        File.WriteAllText(file, "time s,X1\n0,1\n1,0\n");
        ToolRun run = ToolRun.Of("tune", OnePit, file);
        Assert.Equal(3, run.ExitCode);
        Assert.Contains("the trend says nothing of any dose of the site", run.Output, StringComparison.Ordinal);
        Assert.Contains("no column", run.Output, StringComparison.Ordinal);
    }

    private static string Trend(string name) => RepositoryPath.At("tests", "Sequencer.Cli.Tests", "Trends", name + ".csv");

    /// <summary>The heading and all that <c>tune</c> says, without what is said of the site and its files.</summary>
    private static string Said(string output)
    {
        string heading = output.Split('\n')[3];
        int begin = output.IndexOf("\ntune\n", StringComparison.Ordinal);
        int files = output.IndexOf("\nfiles\n", StringComparison.Ordinal);
        int end = files >= 0 ? files : output.IndexOf("\nWhat this says", StringComparison.Ordinal);
        return $"{heading}\n{output.Split('\n').Single(line => line.StartsWith("tune  ", StringComparison.Ordinal))}\n{output[begin..end]}";
    }

    private static string WithLimit(string program, string step, string limit)
    {
        int at = program.IndexOf("limit ", program.IndexOf(step, StringComparison.Ordinal), StringComparison.Ordinal);
        return program[..at] + "limit " + limit + program[program.IndexOf(" then", at, StringComparison.Ordinal)..];
    }

    private static IEnumerable<JsonObject> Settings(JsonObject detail) =>
        detail["doses"]!.AsArray().SelectMany(dose => dose!["settings"]!.AsArray()).Select(setting => setting!.AsObject());

    /// <summary>A reading behind a first-order lag, each second, stepped in twentieths, with two thousandths of ripple.</summary>
    private static string Made(int deadSeconds, double lagSeconds, int pulseSeconds, int everySeconds, int pulses, double eachMoves)
    {
        StringBuilder text = new("time s,TK301.steps,AT301 pH,P304\n");
        double reading = 4.0;
        double mixed = 4.0;
        for (int second = 0; second < (pulses + 2) * everySeconds; second++)
        {
            bool On(int at) => at >= everySeconds && at < (pulses + 1) * everySeconds && at % everySeconds < pulseSeconds;
            text.Append(CultureInfo.InvariantCulture, $"{second},40,{reading + (0.002 * (second % 3 - 1)):0.0000},{(On(second) ? 1 : 0)}\n");
            for (int slice = 0; slice < 20; slice++)
            {
                mixed += On(second - deadSeconds) ? eachMoves / pulseSeconds / 20.0 : 0.0;
                reading += (mixed - reading) / lagSeconds / 20.0;
            }
        }

        return text.ToString();
    }
}
