using System.Numerics;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.DecisionDiagrams;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Tests.ExplicitState;
using Xunit.Abstractions;

namespace Sequencer.Proof.Tests.KnownAnswers;

/// <summary>The decision diagrams count the markings of published nets; small ones are counted one by one as well.</summary>
public sealed class PublishedNetTests(ITestOutputHelper report)
{
    private const int MostCountedOneByOne = 3_000;

    public static TheoryData<string, int, string> Nets => new()
    {
        { "philosophers", 5, "243" },
        { "philosophers", 10, "59049" },
        { "philosophers", 20, "3486784401" },
        { "waiting philosophers", 2, "18" },
        { "waiting philosophers", 5, "1364" },
        { "waiting philosophers", 10, "1860498" },
        { "waiting philosophers", 15, PublishedNets.Lucas(45).ToString(System.Globalization.CultureInfo.InvariantCulture) },
        { "Dekker", 4, "48" },
        { "Dekker", 10, "6144" },
        { "referendum", 5, "244" },
        { "referendum", 10, "59050" },
        { "sieve", 10, "32" },
        { "sieve", 20, "2048" },
        { "sieve", 50, "17179869184" },
        { "readers and writers", 10, "1034" },
        { "cyclic scheduler", 4, "128" },
        { "cyclic scheduler", 10, "20480" },
    };

    [Theory]
    [MemberData(nameof(Nets))]
    public void As_many_markings_are_reached_as_published(string net, int size, string markings)
    {
        TransitionSystem system = Create(net, size);
        BigInteger published = BigInteger.Parse(markings, System.Globalization.CultureInfo.InvariantCulture);
        DiagramBudget budget = new(ProofOptions.Default with { DiagramNodes = 1 << 22, DiagramSteps = long.MaxValue }, new Budget(1, CancellationToken.None));
        Assert.Equal(published, RingSearch.ReachedStates(system, budget));
        report.WriteLine(FormattableString.Invariant($"{net} {size}: {budget.StepsDone} steps"));
        if (published < MostCountedOneByOne)
        {
            ExplicitSearch search = new(system);
            Assert.Null(search.ShortestFailure());
            Assert.Equal(published, search.Reached);
        }
    }

    [Theory]
    [InlineData("philosophers", 10)]
    [InlineData("waiting philosophers", 10)]
    [InlineData("Dekker", 6)]
    [InlineData("referendum", 10)]
    [InlineData("readers and writers", 10)]
    [InlineData("cyclic scheduler", 10)]
    public void Each_engine_alone_proves_what_the_nets_exclude(string net, int size)
    {
        TransitionSystem system = Create(net, size);
        foreach (Engines engine in (Engines[])[Engines.Learning, Engines.Diagrams])
        {
            Verdict verdict = Prover.Decide(system, system.Requirements[0], ProofOptions.Default with { Engines = engine }, null, CancellationToken.None);
            Assert.True(verdict is Holds, $"{engine}: {verdict}");
        }
    }

    private static TransitionSystem Create(string net, int size) => net switch
    {
        "philosophers" => PublishedNets.Philosophers(size),
        "waiting philosophers" => PublishedNets.WaitingPhilosophers(size),
        "Dekker" => PublishedNets.Dekker(size),
        "referendum" => PublishedNets.Referendum(size),
        "sieve" => PublishedNets.Eratosthenes(size),
        "readers and writers" => PublishedNets.ReadersAndWriters(size, size),
        "cyclic scheduler" => PublishedNets.CyclicScheduler(size),
        _ => throw new ArgumentOutOfRangeException(nameof(net)),
    };
}
