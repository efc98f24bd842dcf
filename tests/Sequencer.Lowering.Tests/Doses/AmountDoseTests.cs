using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Doses;

/// <summary>An amount is given once in a batch, whatever comes between; 60 L/min are 100 mL a scan.</summary>
public sealed class AmountDoseTests
{
    private const string Signals = """
        output PD1 motor at %QX1.0 "Lime pump" safe stopped delivers LIME at 60.0 L/min
        reagent LIME "Lime"
        interlock I1 "Mixed" PD1 blocked unless S2
        """;

    [Fact]
    public void The_amount_is_given_and_then_dosed()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch");

        Assert.Equal(Runs((1, 10), (0, 20)), Outputs(bench, 30));
        Assert.Equal((10L, 10L), (bench["PD1.total"], bench["U.step10.dose_PD1.given"]));
    }

    [Fact]
    public void The_step_goes_on_in_the_scan_after_the_last_of_it()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch", exit: "PD1 dosed");

        Assert.Equal(1, bench.Scan(10)["U.step10.active"]);
        Assert.Equal(0, bench.Scan()["U.step10.active"]);
    }

    [Fact]
    public void An_amount_between_two_scans_is_reached_and_passed_by_less_than_one()
    {
        ProgramBench bench = Dosing("amount 0.95 L once a batch");
        bench.Scan(50);

        Assert.Equal(10, bench["PD1.total"]);
    }

    [Fact]
    public void A_hold_keeps_what_was_given_and_the_restart_gives_the_rest()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch");
        bench.Scan(4).Press("hold").Scan(30);
        Assert.Equal((ProceduralState.Held, 4L), (bench.State, bench["PD1.total"]));

        bench.Press("restart").Scan();
        bench.Scan(30);
        Assert.Equal((10L, 0L), (bench["PD1.total"], bench["PD1"]));
    }

    [Fact]
    public void A_loss_of_power_forgets_nothing_and_repeats_nothing()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch");
        bench.Scan(7).LosePower();
        Assert.Equal((ProceduralState.Held, 0L, 7L), (bench.State, bench["PD1"], bench["U.step10.dose_PD1.given"]));

        bench.Press("restart").Scan(40);
        Assert.Equal(10, bench["PD1.total"]);
    }

    [Fact]
    public void A_step_entered_again_gives_nothing_more()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch", exit: "S3", back: true);
        bench.Scan(20);
        bench.Set("S3.contact", 1);
        bench.Scan(2);
        bench.Set("S3.contact", 0);
        bench.Scan();
        bench.Set("S4.contact", 1);
        bench.Scan();
        Assert.Equal(1, bench["U.step10.active"]);

        Assert.Equal(0, Outputs(bench, 20).Sum());
        Assert.Equal(10, bench["PD1.total"]);
    }

    [Fact]
    public void What_an_interlock_keeps_back_is_not_counted()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch");
        bench.Scan(3);
        bench.Set("S2.contact", 0);
        Assert.Equal(0, Outputs(bench, 10).Sum());
        bench.Set("S2.contact", 1);

        Assert.Equal(7, Outputs(bench, 30).Sum());
    }

    [Fact]
    public void By_hand_no_more_than_the_amount_is_given_and_it_counts()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch");
        bench.Set("PD1.manual", 1);
        bench.Set("PD1.manual.demand", 1);

        Assert.Equal(10, Outputs(bench, 40).Sum());
        bench.Set("PD1.manual", 0);
        Assert.Equal(0, Outputs(bench, 20).Sum());
    }

    [Fact]
    public void A_new_batch_gives_its_amount_anew()
    {
        ProgramBench bench = Dosing("amount 1.0 L once a batch");
        bench.Scan(20).Press("stop").Scan(2);
        bench.Press("reset");
        bench.Press("start");

        Assert.Equal(10, Outputs(bench, 30).Sum());
    }

    [Fact]
    public void A_share_of_a_volume_is_worked_out_when_the_dose_begins()
    {
        // 0.5 L for each of 4 m3 are 2 L, 20 scans; the level that rises meanwhile changes nothing.
        ProgramBench bench = Dosing("amount 0.5 L per m3 of LT1, at most 4 L a batch", level: 400);
        bench.Scan(5);
        bench.Set("LT1", 700);
        bench.Scan(40);

        Assert.Equal((20L, 0L, 400L), (bench["PD1.total"], bench["PD1"], bench["U.step10.dose_PD1.basis"]));
    }

    [Fact]
    public void A_share_beyond_the_maximum_stops_at_it_and_holds()
    {
        ProgramBench bench = Dosing("amount 0.5 L per m3 of LT1, at most 4 L a batch", level: 900);
        bench.Scan(60);

        Assert.Equal((40L, ProceduralState.Held), (bench["PD1.total"], bench.State));
    }

    [Fact]
    public void A_volume_that_is_not_usable_when_the_dose_begins_holds_the_unit()
    {
        ProgramBench bench = Bench("amount 0.5 L per m3 of LT1, at most 4 L a batch", "S1", false);
        bench.Set("LT1.fault", 1);
        bench.Scan(5).Press("start");

        Assert.Equal(ProceduralState.Holding, bench.Scan().State);
        Assert.Equal((1L, 0L), (bench["alarm U.step10.dose_PD1.unusable"], bench["PD1.total"]));
    }

    [Fact]
    public void A_total_is_followed_in_whole_pulses()
    {
        // 10 L for each m3 of the other pump's total; it delivers 1 L a scan: a pulse of 3 scans is due every 30.
        ProgramBench bench = new(BenchPrograms.With(
            Signals + "\noutput P9 motor at %QX2.0 \"Feed\" safe stopped delivers WATER at 600 L/min\nreagent WATER \"Feed\"\ninterlock I9 \"x\" P9 blocked while S4",
            """
              step 10 "Both"
                run P9
                dose PD1 amount 10 L per m3 of P9.total in pulses of 0.3 s, at most 4 L a batch
                limit 1 h then hold "Too long"
                go finish when S1
            """));
        bench.Set("S2.contact", 1);
        bench.Scan().Press("start");
        bench.Scan(28);
        Assert.Equal(0, bench["PD1.total"]);

        Assert.Equal(Runs((0, 1), (1, 3), (0, 27), (1, 3)), Outputs(bench, 34));
    }

    [Fact]
    public void A_run_once_a_batch_counts_its_time_through_hold_and_re_entry()
    {
        ProgramBench bench = BenchPrograms.Started("", """
              step 10 "Rinse"
                run M1 for 0.6 s once a batch
                limit 1 h then hold "Too long"
                go 20 when S3
              step 20 "Back"
                limit 1 h then hold "Too long"
                go 10 when S4
                go finish when S1
            """);
        bench.Scan(2).Press("hold").Scan(5);
        bench.Press("restart").Scan();
        bench.Scan(20);
        Assert.Equal(6, bench["U.step10.M1.given"]);

        bench.Set("S3.contact", 1);
        bench.Scan();
        bench.Set("S3.contact", 0);
        bench.Set("S4.contact", 1);
        bench.Scan(2);
        Assert.Equal((1L, 0L), (bench["U.step10.active"], bench["M1"]));
    }

    [Fact]
    public void A_run_at_each_edge_lasts_its_time_from_the_edge()
    {
        ProgramBench bench = BenchPrograms.Started("", """
              step 10 "Turn"
                run M1 for 0.3 s at each rising S2
                limit 1 h then hold "Too long"
                go finish when S1
            """);
        Assert.Equal(0, bench.Scan(5)["M1"]);
        bench.Set("S2.contact", 1);
        long[] runs = [.. Enumerable.Range(0, 7).Select(_ => bench.Scan()["M1"])];
        Assert.Equal(Runs((1, 3), (0, 4)), runs);
        bench.Set("S2.contact", 0);
        bench.Scan();
        bench.Set("S2.contact", 1);
        bench.Scan();
        Assert.Equal(1, bench["M1"]);
        Assert.Equal(0, bench.Press("hold")["M1"]);
    }

    private static ProgramBench Dosing(string dose, string exit = "S1", bool back = false, long level = 0)
    {
        ProgramBench bench = Bench(dose, exit, back);
        bench.Set("LT1", level);
        bench.Set("S2.contact", 1);
        bench.Scan().Press("start");
        return bench;
    }

    private static ProgramBench Bench(string dose, string exit, bool back) => BenchPrograms.Bench(Signals, $"""
          step 10 "Dose"
            dose PD1 {dose}
            limit 1 h then hold "Too long"
            go 20 when {exit}
          step 20 "Rest"
            limit 1 h then hold "Too long"
            {(back ? "go 10 when S4" : "")}
            go finish when S1
        """);

    private static long[] Outputs(ProgramBench bench, int scans) => [.. Enumerable.Range(0, scans).Select(_ => bench.Scan()["PD1"])];

    private static long[] Runs(params (long Value, int Scans)[] runs) => [.. runs.SelectMany(run => Enumerable.Repeat(run.Value, run.Scans))];
}
