using System.Text;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>No run of a random procedure takes longer than its limits say, and some run takes as long.</summary>
public sealed class LongestTimeTests
{
    private const int Programs = 60;
    private const int Runs = 8;
    private const int Scan = 100;

    [Fact]
    public void No_run_is_longer_than_the_longest_time()
    {
        int bounded = 0;
        int reached = 0;
        for (int seed = 0; seed < Programs; seed++)
        {
            Random random = new(seed);
            string program = BenchPrograms.With("", Procedure(random));
            CheckResult check = ProgramChecker.Check(new SourceText("random.seq", program), Scan);
            if (check.Program is null || LongestTime.Of(check.Program, Scan).Single().Most is not { } most)
            {
                continue;
            }

            bounded++;
            long longest = 0;
            for (int run = 0; run < Runs; run++)
            {
                int scans = ScansRunning(new ProgramBench(program), random, run, (most / Scan) + 1);
                Assert.True(scans * Scan <= most, $"seed {seed}: {scans} scans, {most} ms\n{program}");
                longest = Math.Max(longest, scans * Scan);
            }

            reached += longest >= most - (2 * Scan) ? 1 : 0;
        }

        Assert.True(bounded > Programs / 2, $"only {bounded} procedures had a bound");
        Assert.True(reached > bounded / 12, $"only {reached} of {bounded} bounds were nearly reached");
    }

    /// <summary>Scans in Running after a start, while the contacts are at random or all open or all closed.</summary>
    private static int ScansRunning(ProgramBench bench, Random random, int run, long patience)
    {
        bench.Scan();
        bench.Press("start");
        int scans = 0;
        while (bench.State == ProceduralState.Running && scans <= patience)
        {
            foreach (string contact in (string[])["S1", "S2", "S3", "S4"])
            {
                if (!bench.System.Inputs.Any(input => input.Name == contact))
                {
                    continue;
                }

                bench.Set(contact, run switch { 0 => 0, 1 => 1, _ => random.Next(run + 1) == 0 ? 1 : 0 });
            }

            bench.Scan();
            scans++;
        }

        return scans;
    }

    /// <summary>Steps in a row with ways forward, limits that lead on or hold, ways back that are counted, and a fork with its join.</summary>
    private static string Procedure(Random random)
    {
        int steps = 2 + random.Next(4);
        int fork = random.Next(3) == 0 ? random.Next(steps) : -1;
        StringBuilder text = new();
        for (int step = 1; step <= steps; step++)
        {
            string next = step == steps ? "finish" : FormattableString.Invariant($"{(step + 1) * 10}");
            string limit = FormattableString.Invariant($"{2 + random.Next(12)}00 ms");
            bool isFork = step - 1 == fork && step < steps;
            text.Append(FormattableString.Invariant($"  step {step * 10} \"Step {step}\"{(random.Next(5) == 0 && step > 1 && !isFork ? " only if S4" : "")}\n"));
            text.Append(FormattableString.Invariant($"    run M{1 + random.Next(3)}\n"));
            if (isFork)
            {
                text.Append(FormattableString.Invariant($"    limit {limit} then hold \"Slow\"\n    go {(step * 10) + 1} and {(step * 10) + 2} when S{1 + random.Next(4)}\n"));
                for (int branch = 1; branch <= 2; branch++)
                {
                    text.Append(FormattableString.Invariant($"  step {(step * 10) + branch} \"Branch {branch}\"\n    limit {3 + random.Next(9)}00 ms then hold \"Slow\"\n"));
                }

                text.Append(FormattableString.Invariant($"  join {(step * 10) + 1}, {(step * 10) + 2} to {next} when S{1 + random.Next(4)}\n"));
                continue;
            }

            text.Append(FormattableString.Invariant($"    limit {limit} then {(random.Next(8) == 0 ? "hold" : "go " + next)} \"Slow\"\n"));
            text.Append(FormattableString.Invariant($"    go {next} when {(random.Next(4) == 0 ? FormattableString.Invariant($"at step {step * 10} stays {1 + random.Next(9)}00 ms") : "S" + (1 + random.Next(4)))}\n"));
            if (step > 1 && fork < 0 && random.Next(3) == 0)
            {
                text.Append(FormattableString.Invariant($"    go {10 * (1 + random.Next(step - 1))} when S{1 + random.Next(4)}, at most {1 + random.Next(2)} times then hold \"Again\"\n"));
            }
        }

        return text.ToString();
    }
}
