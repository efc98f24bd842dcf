using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Units;

/// <summary>Random batches of three units against a plain queue: never two owners, first come first served, waits that end.</summary>
public sealed class ClaimOrderTests
{
    private const int Scans = 1_500;
    private const int LongestWait = 30;
    private static readonly string[] Units = ["A", "B", "C"];

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(3, true)]
    [InlineData(4, true)]
    public void The_owner_is_the_head_of_the_queue(int seed, bool released)
    {
        Random random = new(seed);
        ProgramBench bench = ClaimPrograms.Bench(3, $"limit 3 s then hold \"Skid is busy\"{(released ? ", released while held" : "")}");
        List<string> queue = [];
        Dictionary<string, int> waited = Units.ToDictionary(unit => unit, _ => 0);
        int grants = 0;
        int longest = 0;
        string? before = null;
        for (int scan = 0; scan < Scans; scan++)
        {
            Disturb(bench, random);
            bench.Scan();
            string? head = queue.FirstOrDefault();
            Assert.Equal(head is null ? [] : [head], Units.Where(unit => bench[$"A.SKID.owned_by.{unit}"] == 1));
            Assert.False(bench["PS"] == 1 && head is null, "driven without an owner");
            grants += head is not null && head != before ? 1 : 0;
            before = head;
            foreach (string unit in Units)
            {
                waited[unit] = bench[$"{unit}.step10.claim1.waits"] == 1 ? waited[unit] + 1 : 0;
                longest = Math.Max(longest, waited[unit]);
                Assert.Equal(1, bench[$"{unit}.step10.claim1.ends"]);
            }

            Assert.Equal((1, 1), (bench["A.SKID.one_owner"], bench["A.SKID.granted"]));
            Queue(queue, unit => bench[$"{unit}.step10.active"] == 1 && (!released || bench[$"{unit}.state"] == (long)ProceduralState.Running));
        }

        Assert.True(grants > 20, $"only {grants} grants");
        Assert.InRange(longest, LongestWait / 2, LongestWait);
    }

    /// <summary>Who has gone leaves; who has come stands behind, in the order of the units.</summary>
    private static void Queue(List<string> queue, Func<string, bool> claims)
    {
        queue.RemoveAll(unit => !claims(unit));
        queue.AddRange(Units.Where(unit => claims(unit) && !queue.Contains(unit)));
    }

    private static void Disturb(ProgramBench bench, Random random)
    {
        foreach (string unit in Units)
        {
            bench.Set($"S{unit}1.contact", random.Next(12) == 0 ? 1 : 0);
            bench.Set($"S{unit}2.contact", random.Next(6) == 0 ? 0 : 1);
            foreach ((string command, int seldom) in new[] { ("start", 4), ("restart", 8), ("reset", 8), ("hold", 60), ("stop", 90), ("abort", 120) })
            {
                bench.Set($"{unit}.{command}", random.Next(seldom) == 0 ? 1 : 0);
            }
        }

        bench.Set("power.returned", random.Next(150) == 0 ? 1 : 0);
    }
}
