using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Doses;

/// <summary>Wait, measure, pulse: never beyond the maximum, never twice, never first after a restart.</summary>
public sealed class DoseTests
{
    private const int Wait = 10;

    /// <summary>The scan of the activation, which has passed when a test begins, is the first of the wait.</summary>
    private const int FirstWait = Wait - 1;
    private const int Pulse = 4;

    private const string Signals = """
        input AT1 0 .. 14.00 pH at %IW6 "pH"
        output PD1 motor at %QX1.0 "Caustic pump" safe stopped delivers CAUSTIC at 0.60 L/min
        reagent CAUSTIC "Caustic" raises AT1
        interlock I1 "Mixed" PD1 blocked unless S2
        """;

    [Fact]
    public void A_dose_begins_with_a_wait_and_alternates_pulse_and_wait()
    {
        ProgramBench bench = Dosing();

        Assert.Equal(Runs((0, FirstWait), (1, Pulse), (0, Wait), (1, Pulse), (0, 3)), Outputs(bench, FirstWait + Pulse + Wait + Pulse + 3));
    }

    [Fact]
    public void No_pulse_is_given_at_the_target_or_beyond()
    {
        ProgramBench bench = Dosing();
        bench.Set("AT1", 700);

        Assert.Equal(0, Outputs(bench, 100).Sum());
    }

    [Fact]
    public void Within_the_fine_band_pulses_are_fine()
    {
        ProgramBench bench = Dosing();
        bench.Set("AT1", 600);

        Assert.Equal(Runs((0, FirstWait), (1, 2), (0, Wait)), Outputs(bench, FirstWait + 2 + Wait));
    }

    [Fact]
    public void All_pulses_of_a_batch_stay_within_the_maximum()
    {
        // 12 mL at 10 mL/s are 12 scans, three pulses; the next does not fit.
        ProgramBench bench = Dosing(maximum: "12 mL");
        long given = Outputs(bench, 4 * (Wait + Pulse)).Sum();

        Assert.Equal((12L, 12L, ProceduralState.Held), (given, bench["PD1.total"], bench.State));
    }

    [Fact]
    public void A_pulse_that_would_pass_the_maximum_is_not_begun()
    {
        ProgramBench bench = Dosing(maximum: "11 mL");
        long given = Outputs(bench, 4 * (Wait + Pulse)).Sum();

        Assert.Equal((8L, ProceduralState.Held), (given, bench.State));
    }

    [Fact]
    public void Manual_cannot_pass_the_maximum_and_counts()
    {
        ProgramBench bench = Dosing(maximum: "12 mL");
        bench.Set("PD1.manual", 1);
        bench.Set("PD1.manual.demand", 1);

        Assert.Equal(12, Outputs(bench, 50).Sum());
        Assert.Equal(12, bench["PD1.total"]);
    }

    [Fact]
    public void Pulses_that_move_nothing_end_the_dose_after_their_number()
    {
        ProgramBench bench = Dosing();
        long given = 0;
        for (int scan = 0; scan < 200 && bench.State == ProceduralState.Running; scan++)
        {
            given += bench.Scan()["PD1"];
        }

        Assert.Equal(ProceduralState.Holding, bench.State);
        Assert.Equal((1L, 3L * Pulse), (bench["alarm U.step10.dose_PD1.no_response"], given));
    }

    [Fact]
    public void A_pulse_that_moves_the_reading_starts_the_count_of_misses_anew()
    {
        ProgramBench bench = Dosing();
        for (int pulse = 0; pulse < 8; pulse++)
        {
            bench.Set("AT1", 300 + (pulse / 2 * 5));
            bench.Scan(Wait + Pulse);
        }

        Assert.Equal((ProceduralState.Running, 8L * Pulse), (bench.State, bench["PD1.total"]));
    }

    [Fact]
    public void A_restart_begins_with_a_wait_and_repeats_no_pulse()
    {
        ProgramBench bench = Dosing();
        bench.Scan(FirstWait + 2).Press("hold");
        Assert.Equal((0L, 2L), (bench["PD1"], bench["PD1.total"]));

        bench.Scan(50).Press("restart");
        Assert.Equal(ProceduralState.Running, bench.Scan().State);
        Assert.Equal(Runs((0, FirstWait), (1, Pulse)), Outputs(bench, FirstWait + Pulse));
    }

    [Fact]
    public void A_loss_of_power_in_a_pulse_keeps_what_was_given_and_repeats_nothing()
    {
        ProgramBench bench = Dosing();
        bench.Scan(FirstWait + 2).LosePower();

        Assert.Equal((ProceduralState.Held, 0L, 2L), (bench.State, bench["PD1"], bench["PD1.total"]));
        bench.Scan().Press("restart").Scan();
        Assert.Equal(0, Outputs(bench, FirstWait).Sum());
        Assert.Equal(1, bench.Scan()["PD1"]);
    }

    [Fact]
    public void A_reading_that_is_not_usable_when_it_is_time_to_measure_holds_the_unit()
    {
        ProgramBench bench = Dosing();
        bench.Set("AT1.fault", 1);
        Assert.Equal(ProceduralState.Running, bench.Scan(FirstWait).State);
        Assert.Equal((ProceduralState.Holding, 1L), (bench.Scan().State, bench["alarm U.step10.dose_PD1.unusable"]));
    }

    [Fact]
    public void A_pulse_cut_short_by_an_interlock_counts_only_what_was_given()
    {
        ProgramBench bench = Dosing();
        bench.Scan(FirstWait + 1);
        bench.Set("S2.contact", 0);
        bench.Scan(Pulse - 1);
        bench.Set("S2.contact", 1);

        Assert.Equal(1, bench["PD1.total"]);
        Assert.Equal(0, Outputs(bench, Wait).Sum());
    }

    [Fact]
    public void After_the_last_pulse_counts_from_the_end_of_the_last_pulse()
    {
        ProgramBench bench = Dosing(exit: "AT1 > 2.00 stays 0.6 s after the last pulse");
        bench.Set("AT1", 100);
        bench.Scan(FirstWait + 1);
        bench.Set("AT1", 600);

        // The pulse has three more scans; its last one is seen at the start of the next.
        Assert.Equal(1, bench.Scan(Pulse - 1 + 1 + 6)["U.step10.active"]);
        Assert.Equal(0, bench.Scan()["U.step10.active"]);
    }

    [Fact]
    public void A_new_batch_begins_with_nothing_given()
    {
        ProgramBench bench = Dosing();
        bench.Scan(Wait + Pulse);
        bench.Press("stop").Scan(2);
        Assert.Equal(Pulse, bench["PD1.total"]);
        bench.Press("reset");
        bench.Press("start");

        Assert.Equal(0, bench["PD1.total"]);
    }

    /// <summary>Running, mixed, at pH 3 and far from its target; a wait of 10 scans, pulses of 4 or, near it, 2.</summary>
    private static ProgramBench Dosing(string maximum = "1 L", string exit = "S1")
    {
        ProgramBench bench = BenchPrograms.Bench(Signals, $"""
              step 10 "Raise"
                dose PD1 pulse 0.4 s, 0.2 s within 1.50 pH, then wait 1 s toward AT1 at 7.00 pH, at most {maximum} a batch, no 0.05 pH in 3 pulses
                limit 1 h then hold "Too long"
                go finish when {exit}
            """);
        bench.Set("AT1", 300);
        bench.Set("S2.contact", 1);
        bench.Scan().Press("start");
        return bench;
    }

    private static long[] Outputs(ProgramBench bench, int scans) => [.. Enumerable.Range(0, scans).Select(_ => bench.Scan()["PD1"])];

    private static long[] Runs(params (long Value, int Scans)[] runs) => [.. runs.SelectMany(run => Enumerable.Repeat(run.Value, run.Scans))];
}
