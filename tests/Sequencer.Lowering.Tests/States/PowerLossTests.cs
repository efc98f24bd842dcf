using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.States;

/// <summary>Power can go between any two scans; what was in progress is Held afterwards, never Running.</summary>
public sealed class PowerLossTests
{
    [Theory]
    [InlineData(ProceduralState.Idle, ProceduralState.Idle)]
    [InlineData(ProceduralState.Running, ProceduralState.Held)]
    [InlineData(ProceduralState.Complete, ProceduralState.Complete)]
    [InlineData(ProceduralState.Holding, ProceduralState.Held)]
    [InlineData(ProceduralState.Held, ProceduralState.Held)]
    [InlineData(ProceduralState.Restarting, ProceduralState.Held)]
    [InlineData(ProceduralState.Stopping, ProceduralState.Stopped)]
    [InlineData(ProceduralState.Stopped, ProceduralState.Stopped)]
    [InlineData(ProceduralState.Aborting, ProceduralState.Aborted)]
    [InlineData(ProceduralState.Aborted, ProceduralState.Aborted)]
    public void Nothing_runs_after_a_loss_of_power(ProceduralState before, ProceduralState after)
    {
        ProgramBench bench = StateTableTests.In(before).LosePower();

        Assert.Equal(after, bench.State);
        Assert.Equal(0, bench["M1"]);
    }

    [Theory]
    [InlineData("start")]
    [InlineData("restart")]
    [InlineData("reset")]
    public void A_button_held_through_the_power_up_gives_no_command(string command)
    {
        ProgramBench bench = StateTableTests.In(ProceduralState.Held);
        bench.Set($"U.{command}", 1);

        Assert.Equal(ProceduralState.Held, bench.LosePower().Scan().State);
    }

    [Fact]
    public void The_situation_and_the_limit_clock_are_kept()
    {
        ProgramBench bench = BenchPrograms.Started("").Scan(6);
        long clock = bench["U.step10.clock"];
        bench.LosePower();

        Assert.Equal(1, bench["U.step10.active"]);
        Assert.Equal(7, clock);
        Assert.Equal(clock, bench["U.step10.clock"]);
    }

    [Fact]
    public void Only_a_retained_latch_is_kept()
    {
        ProgramBench bench = BenchPrograms.Bench("""
            latch KEPT "Kept" set when S2 clear when S3 retained
            latch LOST "Lost" set when S2 clear when S3
            interlock I1 "Kept" M2 blocked while KEPT
            interlock I2 "Lost" M3 blocked while LOST
            """);
        bench.Set("S2.contact", 1);
        bench.Scan();
        bench.Set("S2.contact", 0);

        bench.Scan();
        Assert.Equal((1, 1), (bench["I1.blocks"], bench["I2.blocks"]));
        bench.LosePower();
        Assert.Equal((1, 0), (bench["I1.blocks"], bench["I2.blocks"]));
    }
}
