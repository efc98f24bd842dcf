using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Signals;

/// <summary>A value put in place of a reading (spec/meaning.md, Calibration).</summary>
public sealed class CalibrationTests
{
    private const string Calibrate = "calibrate LT1 at most 2 s role Maintenance \"Level set by hand\"\ninterlock IC \"High\" M1 blocked while LT1 > 5.00 m3";

    private static ProgramBench Bench()
    {
        ProgramBench bench = BenchPrograms.Bench(Calibrate);
        bench.Set("LT1", 200);
        bench.Set("LT1.put", 700);
        bench.Set("U.role.Maintenance", 1);
        return bench.Scan(2);
    }

    [Fact]
    public void The_value_counts_from_the_edge_of_the_command_until_it_is_let_go()
    {
        ProgramBench bench = Bench();
        bench.Set("LT1.calibration", 1);
        Assert.Equal((700, 1), (bench.Scan()["LT1.held"], bench["alarm LT1.calibration"]));
        bench.Set("LT1.calibration", 0);
        Assert.Equal((200, 0), (bench.Scan()["LT1.held"], bench["alarm LT1.calibration"]));
    }

    [Fact]
    public void A_channel_that_is_bad_is_replaced_too()
    {
        ProgramBench bench = Bench();
        bench.Set("LT1.fault", 1);
        bench.Set("LT1.calibration", 1);
        bench.Scan(10);
        Assert.Equal((700, 1), (bench["LT1.held"], bench["LT1.usable"]));
    }

    [Fact]
    public void A_start_is_refused_meanwhile()
    {
        ProgramBench bench = Bench();
        bench.Set("LT1.calibration", 1);
        bench.Scan();
        bench.Press("start");
        Assert.Equal((ProceduralState.Idle, 1L), (bench.State, bench["alarm U.start.calibration"]));
    }

    [Fact]
    public void A_command_together_with_a_start_begins_none_of_the_two_twice()
    {
        ProgramBench bench = Bench();
        bench.Set("LT1.calibration", 1);
        bench.Press("start");
        Assert.Equal((ProceduralState.Idle, 700L), (bench.State, bench["LT1.held"]));
    }

    [Theory]
    [InlineData("U.role.Maintenance")]
    [InlineData("LT1.calibration")]
    public void It_ends_with_the_role_and_with_the_command(string input)
    {
        ProgramBench bench = Bench();
        bench.Set("LT1.calibration", 1);
        bench.Scan();
        bench.Set(input, 0);
        Assert.Equal(200, bench.Scan()["LT1.held"]);
    }

    [Fact]
    public void It_ends_with_its_time_and_says_so_until_the_command_is_taken_back()
    {
        ProgramBench bench = Bench();
        bench.Set("LT1.calibration", 1);
        bench.Scan(20);
        Assert.Equal((700, 0), (bench["LT1.held"], bench["alarm LT1.calibration.expired"]));
        bench.Scan(5);
        Assert.Equal((200, 1), (bench["LT1.held"], bench["alarm LT1.calibration.expired"]));
        bench.Set("LT1.calibration", 0);
        Assert.Equal(0, bench.Scan()["alarm LT1.calibration.expired"]);
    }

    [Fact]
    public void In_a_batch_it_is_refused()
    {
        ProgramBench bench = Bench();
        bench.Press("start");
        bench.Set("LT1.calibration", 1);
        Assert.Equal((200, 1), (bench.Scan()["LT1.held"], bench["alarm LT1.calibration.refused"]));
    }

    [Fact]
    public void A_loss_of_power_ends_it()
    {
        ProgramBench bench = Bench();
        bench.Set("LT1.calibration", 1);
        bench.Scan();
        bench.LosePower();
        Assert.Equal(200, bench["LT1.held"]);
        Assert.Equal(200, bench.Scan(5)["LT1.held"]);
    }
}
