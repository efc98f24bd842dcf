using System.Numerics;
using Sequencer.Proof.DecisionDiagrams;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Tests.DecisionDiagrams;

/// <summary>Each operation on random functions of six variables against truth tables of 64 bits.</summary>
public sealed class DiagramsTests
{
    private const int Variables = 6;

    [Fact]
    public void Operations_do_what_truth_tables_say_and_equal_functions_are_equal_edges()
    {
        Random random = new(1);
        Diagrams diagrams = New(1 << 16);
        List<(int Edge, ulong Table)> made = [(Diagrams.True, ulong.MaxValue), (Diagrams.False, 0)];
        made.AddRange(Enumerable.Range(0, Variables).Select(level => (diagrams.Variable(level), Column(level))));
        for (int round = 0; round < 3_000; round++)
        {
            ((int Edge, ulong Table) a, (int Edge, ulong Table) b, (int Edge, ulong Table) c) = (Pick(), Pick(), Pick());
            int[] gone = [.. Enumerable.Range(0, Variables).Where(_ => random.Next(3) == 0)];
            (int Edge, ulong Table) next = random.Next(5) switch
            {
                0 => (diagrams.And(a.Edge, b.Edge), a.Table & b.Table),
                1 => (diagrams.Or(a.Edge, b.Edge ^ 1), a.Table | ~b.Table),
                2 => (diagrams.ExclusiveOr(a.Edge, b.Edge), a.Table ^ b.Table),
                3 => (diagrams.Choice(a.Edge, b.Edge, c.Edge), (a.Table & b.Table) | (~a.Table & c.Table)),
                _ => (diagrams.AndExists(a.Edge, b.Edge, diagrams.Cube(gone)), gone.Aggregate(a.Table & b.Table, Exists)),
            };
            made.Add(next);
            Assert.Equal(Table(diagrams, next.Edge), next.Table);
            Assert.Equal(diagrams.CountOver(next.Edge, Enumerable.Range(0, Variables)), new BigInteger(BitOperations.PopCount(next.Table)));
            int restricted = diagrams.Restrict(a.Edge, b.Edge);
            Assert.True(b.Table == 0 || (Table(diagrams, restricted) & b.Table) == (a.Table & b.Table), $"round {round}");
            if (round % 500 == 499)
            {
                made.RemoveRange(8, made.Count - 20);
                diagrams.Collect(made.Select(function => function.Edge));
            }
        }

        Assert.All(made.GroupBy(function => function.Table), same => Assert.Single(same.Select(function => function.Edge).Distinct()));

        (int Edge, ulong Table) Pick() => made[random.Next(made.Count)];
    }

    [Fact]
    public void Raising_replaces_each_variable_by_the_one_above()
    {
        Diagrams diagrams = New(1 << 16);
        int low = diagrams.Or(diagrams.And(diagrams.Variable(1), diagrams.Variable(3)), diagrams.Variable(5));
        int high = diagrams.Or(diagrams.And(diagrams.Variable(0), diagrams.Variable(2)), diagrams.Variable(4));
        Assert.Equal(high, diagrams.RaiseByOne(low));
        Assert.Equal(high ^ 1, diagrams.RaiseByOne(low ^ 1));
    }

    [Fact]
    public void Too_many_nodes_end_it_in_words()
    {
        Diagrams diagrams = new(40, Limit(1 << 10));
        DiagramLimitException limit = Assert.Throws<DiagramLimitException>(() =>
        {
            // The worst order for sums of products: all first factors above all second ones.
            _ = Enumerable.Range(0, 20).Aggregate(Diagrams.False, (sum, factor) => diagrams.Or(sum, diagrams.And(diagrams.Variable(factor), diagrams.Variable(20 + factor))));
        });
        Assert.Contains("nodes", limit.Message, StringComparison.Ordinal);
    }

    private static Diagrams New(int nodes) => new(Variables, Limit(nodes));

    private static DiagramBudget Limit(int nodes) => new(ProofOptions.Default with { DiagramNodes = nodes }, new Budget(1, CancellationToken.None));

    private static ulong Column(int level) =>
        Enumerable.Range(0, 64).Aggregate(0UL, (table, row) => table | ((ulong)((row >> level) & 1) << row));

    private static ulong Exists(ulong table, int level)
    {
        ulong high = table & Column(level);
        ulong low = table & ~Column(level);
        return high | (high >> (1 << level)) | low | (low << (1 << level));
    }

    private static ulong Table(Diagrams diagrams, int edge)
    {
        ulong table = 0;
        for (int row = 0; row < 64; row++)
        {
            int at = edge;
            while (at >> 1 != 0)
            {
                at = ((row >> diagrams.LevelOf(at)) & 1) != 0 ? diagrams.High(at) : diagrams.Low(at);
            }

            table |= (at == Diagrams.True ? 1UL : 0UL) << row;
        }

        return table;
    }
}
