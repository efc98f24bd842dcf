using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.States;

/// <summary>A unit may not stay Held for ever (spec/meaning.md, Hold).</summary>
public sealed class HeldLimitTests
{
    [Theory]
    [InlineData("stop", ProceduralState.Stopping)]
    [InlineData("abort", ProceduralState.Aborting)]
    [InlineData("alarm", ProceduralState.Held)]
    public void After_its_time_in_held_the_reaction_follows(string reaction, ProceduralState then)
    {
        ProgramBench bench = BenchPrograms.Started($"held at most 1 s then {reaction} \"Held too long\"");
        bench.Press("hold");
        bench.Scan();
        Assert.Equal(ProceduralState.Held, bench.State);
        bench.Scan(9);
        Assert.Equal((ProceduralState.Held, 0L), (bench.State, bench["alarm U.held.limit"]));
        bench.Scan();
        Assert.Equal((then, 1L), (bench.State, bench["alarm U.held.limit"]));
    }

    [Fact]
    public void A_restart_begins_the_time_anew()
    {
        ProgramBench bench = BenchPrograms.Started("held at most 1 s then stop \"Held too long\"");
        bench.Press("hold");
        bench.Scan(8);
        bench.Press("restart");
        bench.Scan(3);
        Assert.Equal(ProceduralState.Running, bench.State);
        bench.Press("hold");
        bench.Scan(9);
        Assert.Equal(ProceduralState.Held, bench.State);
    }

    [Fact]
    public void A_loss_of_power_while_held_does_not_begin_it_anew()
    {
        ProgramBench bench = BenchPrograms.Started("held at most 1 s then stop \"Held too long\"");
        bench.Press("hold");
        bench.Scan(8);
        bench.LosePower();
        Assert.Equal(ProceduralState.Held, bench.State);
        bench.Scan(2);
        Assert.Equal(ProceduralState.Stopping, bench.State);
    }
}
