using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Protections;

/// <summary>From demand to what is written: manual, permissives, interlocks, exclusions, devices that do not obey.</summary>
public sealed class OutputTests
{
    [Fact]
    public void An_interlock_forces_the_safe_value_and_lets_go_by_itself()
    {
        ProgramBench bench = BenchPrograms.Started("interlock I1 \"Block\" M1 blocked while S2");
        bench.Set("S2.contact", 1);
        Assert.Equal(0, bench.Scan()["M1"]);
        bench.Set("S2.contact", 0);
        Assert.Equal(1, bench.Scan()["M1"]);
    }

    [Fact]
    public void An_interlock_with_a_release_holds_on_between_its_thresholds_and_over_a_loss_of_power()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Full\" M1 blocked from LT1 > 8.00 m3 until LT1 < 6.00 m3 and reset");
        bench.Set("LT1", 700);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);
        bench.Set("LT1", 801);
        Assert.Equal(1, bench.Scan()["I1.blocks"]);
        bench.Set("LT1", 700);
        Assert.Equal(1, bench.Press("reset")["I1.blocks"]);
        bench.Set("LT1", 500);
        Assert.Equal(1, bench.Scan()["I1.blocks"]);
        Assert.Equal(1, bench.LosePower()["I1.blocks"]);
        bench.Scan();
        Assert.Equal(0, bench.Press("reset")["I1.blocks"]);
    }

    [Fact]
    public void Manual_passes_the_protections()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Block\" M1 blocked while S2");
        bench.Set("M1.manual", 1);
        bench.Set("M1.manual.demand", 1);
        Assert.Equal(1, bench.Scan()["M1"]);
        bench.Set("S2.contact", 1);
        Assert.Equal(0, bench.Scan()["M1"]);
    }

    [Fact]
    public void In_manual_the_demand_of_the_steps_does_not_count()
    {
        ProgramBench bench = BenchPrograms.Started("");
        bench.Set("M1.manual", 1);
        Assert.Equal(0, bench.Scan()["M1"]);
    }

    [Fact]
    public void The_name_of_an_output_in_an_interlock_means_this_scan()
    {
        ProgramBench bench = BenchPrograms.Started("interlock I1 \"Not beside\" M2 blocked while M1", """
              step 10 "Both"
                run M1
                run M2
                limit 1 h then hold "Too long"
                go finish when S1
            """);

        Assert.Equal((1, 0), (bench["M1"], bench["M2"]));
    }

    [Fact]
    public void Of_two_that_exclude_each_other_the_first_written_runs_and_the_time_between_counts_from_its_end()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Apart\" M1, M2 exclusive, 0.5 s between").Scan(10);
        foreach (string tag in new[] { "M1", "M2" })
        {
            bench.Set($"{tag}.manual", 1);
            bench.Set($"{tag}.manual.demand", 1);
        }

        Assert.Equal((1, 0), (bench.Scan(3)["M1"], bench["M2"]));
        bench.Set("M1.manual.demand", 0);
        Assert.Equal([0, 0, 0, 0, 0, 1], Enumerable.Range(0, 6).Select(_ => bench.Scan()["M2"]));
        bench.Set("M1.manual.demand", 1);
        Assert.Equal((0, 1), (bench.Scan(9)["M1"], bench["M2"]));
    }

    [Fact]
    public void An_exclusion_begins_anew_after_a_loss_of_power()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Apart\" M1, M2 exclusive, 0.5 s between").Scan(10);
        bench.Set("M2.manual", 1);
        bench.Set("M2.manual.demand", 1);
        Assert.Equal(1, bench.Scan()["M2"]);

        Assert.Equal(0, bench.LosePower()["M2"]);
        Assert.Equal([0, 0, 0, 0, 1], Enumerable.Range(0, 5).Select(_ => bench.Scan()["M2"]));
    }

    [Fact]
    public void A_permissive_refuses_the_start_only_and_asks_for_its_reaction_after_its_time()
    {
        ProgramBench bench = BenchPrograms.Started("permissive P1 \"Ready\" M1 starts only with S2 else after 0.5 s hold");
        Assert.Equal(0, bench["M1"]);
        bench.Set("S2.contact", 1);
        Assert.Equal(1, bench.Scan()["M1"]);
        bench.Set("S2.contact", 0);
        Assert.Equal(1, bench.Scan(20)["M1"]);

        ProgramBench refused = BenchPrograms.Started("permissive P1 \"Ready\" M1 starts only with S2 else after 0.5 s hold");
        Assert.Equal(ProceduralState.Running, refused.Scan(4).State);
        Assert.Equal(ProceduralState.Holding, refused.Scan().State);
    }

    [Fact]
    public void A_device_that_disagrees_for_longer_than_its_time_fails_until_a_reset()
    {
        ProgramBench bench = BenchPrograms.Started("""
            output PD1 motor at %QX1.0 "Pump" safe stopped confirm S2 within 0.5 s
            """, """
              step 10 "Pump"
                run PD1
                limit 1 h then hold "Too long"
                go finish when S1
            """);

        Assert.Equal((ProceduralState.Running, 0L), (bench.Scan(5).State, bench["PD1.failed"]));
        Assert.Equal((ProceduralState.Holding, 1L), (bench.Scan().State, bench["PD1.failed"]));
        Assert.Equal(1, bench.Scan(10)["PD1.failed"]);
        Assert.Equal(0, bench.Press("reset")["PD1.failed"]);
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("held running", 1)]
    [InlineData("held last", 1)]
    public void Held_has_its_own_value_at_rest(string row, int expected)
    {
        ProgramBench bench = BenchPrograms.Started($"output AG1 motor at %QX1.0 \"Agitator\" safe stopped {row}", """
              step 10 "Mix"
                run AG1
                limit 1 h then hold "Too long"
                go finish when S1
            """);

        Assert.Equal(expected, bench.Press("hold")["AG1"]);
        Assert.Equal(expected, bench.Scan(5)["AG1"]);
        Assert.Equal(0, bench.Press("stop")["AG1"]);
    }

    [Fact]
    public void A_step_that_says_off_wins_over_one_that_says_on()
    {
        ProgramBench bench = BenchPrograms.Started("output AG1 motor at %QX1.0 \"Agitator\" safe running", """
              step 10 "Still"
                stop AG1
                limit 1 h then hold "Too long"
                go finish when S1
            """);

        Assert.Equal(0, bench["AG1"]);
        bench.Set("S1.contact", 1);
        Assert.Equal(1, bench.Scan()["AG1"]);
    }
}
