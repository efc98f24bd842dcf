using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>Steps of 0.1 %; at most 1 % a scan, so 10 steps.</summary>
public sealed class AnalogueOutputTests
{
    private const string Declarations = """
        output SC1 0 .. 100.0 % at %QW0 "Speed" safe 5.0 %, emergency 0.0 %, rate at most 10.0 % in 1 s
        output SC2 0 .. 100.0 % at %QW2 "Opening" safe 0.0 %
        parameter speed = 40.0 % from 20.0 % to 60.0 %
        interlock I1 "Stopped" SC1, M1 blocked while S3
        trip T1 "Emergency" when S4 then emergency
        """;

    private const string Procedure = """
          step 10 "Run"
            run M1
            set SC1 to speed
            ramp SC2 from 10.0 % to 60.0 % in 5 min
            limit 1 h then hold "Too long"
            go 20 when S1
          step 20 "Down"
            ramp SC2 from 60.0 % to 59.3 % in 2 s
            limit 1 h then hold "Too long"
            go finish when S2
        """;

    [Fact]
    public void A_value_is_reached_at_the_rate_allowed_and_left_with_the_step()
    {
        ProgramBench bench = BenchPrograms.Bench(Declarations, Procedure);
        Assert.Equal(50, bench.Scan()["SC1"]);
        Assert.Equal(60, bench.Press("start")["SC1"]);
        Assert.Equal(70, bench.Scan()["SC1"]);
        Assert.Equal(400, bench.Scan(100)["SC1"]);
        bench.Set("S1.contact", 1);
        Assert.Equal(390, bench.Scan()["SC1"]);
        Assert.Equal(50, bench.Scan(60)["SC1"]);
    }

    [Fact]
    public void An_interlock_forces_the_safe_value_at_once_and_an_emergency_its_own()
    {
        ProgramBench bench = BenchPrograms.Started(Declarations, Procedure);
        bench.Scan(100);
        bench.Set("S3.contact", 1);
        Assert.Equal((50L, 0L), (bench.Scan()["SC1"], bench["M1"]));
        bench.Set("S4.contact", 1);
        Assert.Equal(0, bench.Scan()["SC1"]);
    }

    [Fact]
    public void A_ramp_is_even_and_arrives_on_time()
    {
        // 500 steps in 3000 scans: one step every six scans.
        ProgramBench bench = BenchPrograms.Started(Declarations, Procedure);
        Assert.Equal(100, bench["SC2"]);
        Assert.Equal(100, bench.Scan(5)["SC2"]);
        Assert.Equal(101, bench.Scan()["SC2"]);
        Assert.Equal(350, bench.Scan(1494)["SC2"]);
        Assert.Equal(599, bench.Scan(1499)["SC2"]);
        Assert.Equal(600, bench.Scan()["SC2"]);
        Assert.Equal(600, bench.Scan(500)["SC2"]);
        bench.Set("S1.contact", 1);
        bench.Scan(20);
        Assert.Equal(594, bench["SC2"]);
        Assert.Equal(593, bench.Scan()["SC2"]);
    }

    [Fact]
    public void A_hold_stops_a_ramp_and_a_restart_takes_it_up()
    {
        ProgramBench bench = BenchPrograms.Started(Declarations, Procedure);
        bench.Scan(600);
        Assert.Equal(200, bench["SC2"]);
        Assert.Equal(0, bench.Press("hold")["SC2"]);
        bench.Scan(100).Press("restart").Scan();
        Assert.Equal((ProceduralState.Running, 200L), (bench.State, bench["SC2"]));
    }

    [Fact]
    public void In_manual_the_operators_value_counts_within_the_range()
    {
        ProgramBench bench = BenchPrograms.Bench(Declarations, Procedure);
        bench.Set("SC2.manual", 1);
        bench.Set("SC2.manual.demand", 5000);
        Assert.Equal(1000, bench.Scan()["SC2"]);
        bench.Set("SC2.manual.demand", -7);
        Assert.Equal(0, bench.Scan()["SC2"]);
    }
}
