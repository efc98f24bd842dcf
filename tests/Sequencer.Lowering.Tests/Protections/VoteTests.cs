namespace Sequencer.Lowering.Tests.Protections;

/// <summary>
/// Votes of MooN: M of N instruments must tell the fact (IEC 61511-1, terms, MooN: from memory). The tables are
/// enumerated from that definition and from what the program says of a bad member.
/// </summary>
public sealed class VoteTests
{
    /// <summary>A member that does not say so is 0.</summary>
    private const int Yes = 1;
    private const int Bad = 2;

    public static TheoryData<int, int> Sizes
    {
        get
        {
            TheoryData<int, int> sizes = [];
            for (int voters = 1; voters <= 4; voters++)
            {
                for (int needed = 1; needed <= voters; needed++)
                {
                    sizes.Add(needed, voters);
                }
            }

            return sizes;
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_vote_of_switches_is_so_when_the_needed_number_say_so(int needed, int voters)
    {
        ProgramBench bench = BenchPrograms.Bench(FormattableString.Invariant(
            $"voted V \"Vote\" {needed}oo{voters} of {string.Join(", ", Enumerable.Range(1, voters).Select(member => $"S{member}"))}\ninterlock I1 \"Block\" M1 blocked while V"));
        foreach (int[] states in Tables(voters, 2))
        {
            for (int member = 0; member < voters; member++)
            {
                bench.Set($"S{member + 1}.contact", states[member]);
            }

            Assert.True(bench.Scan()["V"] == (states.Sum() >= needed ? 1 : 0), string.Join(' ', states));
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_bad_member_that_counts_as_a_demand_is_one_possibly_and_never_surely(int needed, int voters) => Check(needed, voters, "demand", states =>
    {
        int yes = states.Count(state => state == Yes);
        return (yes >= needed, yes + states.Count(state => state == Bad) >= needed);
    });

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_bad_member_that_drops_out_leaves_fewer_votes_and_nothing_is_known_when_all_are_bad(int needed, int voters) => Check(needed, voters, "fewer votes", states =>
    {
        int left = states.Count(state => state != Bad);
        bool says = states.Count(state => state == Yes) >= Math.Min(needed, left);
        return left == 0 ? (false, true) : (says, says);
    });

    [Fact]
    public void Members_that_disagree_for_too_long_and_bad_members_are_told()
    {
        ProgramBench bench = BenchPrograms.Bench("""
            voted V "Vote" 1oo2 of S2, LT1 > 5.00 m3, if bad fewer votes, differ for 0.3 s
            interlock I1 "Block" M1 blocked while V
            """).Scan();
        bench.Set("S2.contact", 1);
        Assert.Equal([0, 0, 0, 1], Enumerable.Range(0, 4).Select(_ => bench.Scan()["alarm V.differ"]));
        Assert.Equal(0, bench["alarm V.bad"]);
        bench.Set("LT1.fault", 1);
        Assert.Equal((1L, 0L), (bench.Scan(5)["alarm V.bad"], bench["alarm V.differ"]));
    }

    private static void Check(int needed, int voters, string bad, Func<int[], (bool Surely, bool Possibly)> expected)
    {
        string inputs = string.Concat(Enumerable.Range(1, voters).Select(member =>
            FormattableString.Invariant($"input LV{member} 0 .. 10.00 m3 at %IW{10 + member} \"Level\"\n")));
        string members = string.Join(", ", Enumerable.Range(1, voters).Select(member => FormattableString.Invariant($"LV{member} > 5.00 m3")));
        ProgramBench bench = BenchPrograms.Bench(FormattableString.Invariant(
            $"{inputs}voted V \"Vote\" {needed}oo{voters} of {members}, if bad {bad}\ninterlock I1 \"Block\" M1 blocked while V"));
        foreach (int[] states in Tables(voters, 3))
        {
            for (int member = 0; member < voters; member++)
            {
                bench.Set(FormattableString.Invariant($"LV{member + 1}.fault"), states[member] == Bad ? 1 : 0);
                bench.Set(FormattableString.Invariant($"LV{member + 1}"), states[member] == Yes ? 501 : 500);
            }

            (bool surely, bool possibly) = expected(states);
            bench.Scan();
            Assert.True((bench["V"], bench["V.possibly"]) == (surely ? 1 : 0, possibly ? 1 : 0), string.Join(' ', states));
            Assert.Equal(possibly ? 1 : 0, bench["I1.blocks"]);
        }
    }

    /// <summary>Every table row: each member in each state.</summary>
    private static IEnumerable<int[]> Tables(int voters, int states)
    {
        for (int row = 0; row < (int)Math.Pow(states, voters); row++)
        {
            int rest = row;
            int[] table = new int[voters];
            for (int member = 0; member < voters; member++)
            {
                table[member] = rest % states;
                rest /= states;
            }

            yield return table;
        }
    }
}
