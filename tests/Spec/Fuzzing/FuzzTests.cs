using System.Diagnostics;
using System.Globalization;
using Sequencer.Language.Parsing;
using Sequencer.Testing;
using Xunit.Abstractions;

namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>
/// Changed programs are always answered: no exception, no endless work, every message at a place, a layout that stays and
/// changes nothing, and a structured text that runs like the program.
/// The environment's FUZZ_SECONDS, FUZZ_SEED and FUZZ_FIRST say how long, with which seed and from which input on: <c>bash tests/full fuzz</c>.
/// </summary>
public sealed class FuzzTests(ITestOutputHelper output)
{
    private const int InputsOfTheSuite = 6_000;

    public static TheoryData<string> Found => [.. Directory.EnumerateFiles(RepositoryPath.At("tests", "Spec", "Fuzzing", "Found"), "*.txt").Select(path => Path.GetFileName(path))];

    [Fact]
    public void Changed_programs_are_answered()
    {
        int seed = Setting("FUZZ_SEED", 1);
        int seconds = Setting("FUZZ_SECONDS", 0);
        Stopwatch watch = Stopwatch.StartNew();
        FuzzRun run = new(seed);
        string? failure = run.Judge(Setting("FUZZ_FIRST", 0), so => seconds > 0 ? watch.Elapsed.TotalSeconds < seconds : so.Count < InputsOfTheSuite);
        string figures = string.Create(CultureInfo.InvariantCulture, $"fuzzing: seed {seed}, {run.Count} inputs, {run.Lowered} of them without an error and lowered, {watch.Elapsed.TotalSeconds:0} s");
        output.WriteLine(figures);
        File.WriteAllText(Path.Combine(AppContext.BaseDirectory, "fuzz-report.txt"), figures + "\n");
        Assert.True(failure is null, failure);
        Assert.True(run.Lowered > run.Count / 20, figures);
    }

    /// <summary>Small inputs that once failed.</summary>
    [Theory]
    [MemberData(nameof(Found))]
    public void What_failed_once_does_not_fail_again(string file)
    {
        string text = File.ReadAllText(RepositoryPath.At("tests", "Spec", "Fuzzing", "Found", file));
        Assert.Null(new FuzzRun(1).Judge(FuzzInput.Read(text), new ParseCache()));
    }

    [Fact]
    public void A_failing_input_is_made_as_small_as_what_it_fails_of()
    {
        FuzzInput input = FuzzInput.Read("===== program\na b\nc d\n===== program\ne f\n===== lib/x.seqlib\ng\n");
        FuzzInput small = FuzzShrinker.Shrink(input, candidate => candidate.Texts.Any(text => text.Contains('d', StringComparison.Ordinal)));
        Assert.Equal(" d", Assert.Single(small.Texts));
        Assert.Equal(input.Write(), FuzzInput.Read(input.Write()).Write());
    }

    [Fact]
    public void An_input_follows_from_its_seed_and_number() =>
        Assert.All(Enumerable.Range(0, 50), number => Assert.Equal(FuzzMutator.Make(7, number).Write(), FuzzMutator.Make(7, number).Write()));

    private static int Setting(string name, int otherwise) =>
        Environment.GetEnvironmentVariable(name) is { Length: > 0 } value ? int.Parse(value, CultureInfo.InvariantCulture) : otherwise;
}
