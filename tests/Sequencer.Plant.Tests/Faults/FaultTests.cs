using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.Runs;

namespace Sequencer.Plant.Tests.Faults;

/// <summary>Each failure mode does what its name says, and its end ends it.</summary>
public sealed class FaultTests
{
    private static RunningPlant Started()
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Site("marlpit-wharf"));
        plant.Command(true, "XV200", "P200");
        plant.Run(400.0);
        plant.Command(false, "XV200", "P200");
        plant.Command(true, "AG201", "P205");
        plant.Run(60.0);
        return plant;
    }

    [Fact]
    public void A_pump_that_fails_to_start_shows_it()
    {
        RunningPlant plant = Started();
        plant.Inject("P202.fails-to-start");
        plant.Command(true, "P202");
        plant.Run(20.0);
        Assert.False(plant.Contact("YS202"));
        Assert.Equal(0.0, plant.Total("FERRIC.used"));
        plant.Clear("P202.fails-to-start");
        plant.Run(20.0);
        Assert.True(plant.Contact("YS202"));
        Assert.Equal(0.5, plant.Total("FERRIC.used"), 0.02);
    }

    [Fact]
    public void A_pump_that_keeps_running_doses_on()
    {
        RunningPlant plant = Started();
        plant.Command(true, "P202");
        plant.Run(10.0);
        plant.Inject("P202.keeps-running");
        plant.Command(false, "P202");
        plant.Run(50.0);
        Assert.True(plant.Contact("YS202"));
        Assert.Equal(1.5, plant.Total("FERRIC.used"), 0.02);
        plant.Clear("P202.keeps-running");
        plant.Run(5.0);
        Assert.False(plant.Contact("YS202"));
    }

    [Fact]
    public void A_pump_without_flow_looks_as_if_it_ran()
    {
        RunningPlant plant = Started();
        plant.Inject("P202.no-flow");
        plant.Command(true, "P202");
        plant.Run(20.0);
        Assert.True(plant.Contact("YS202"));
        Assert.Equal(0.0, plant.Total("FERRIC.used"), 0.01);
    }

    [Fact]
    public void A_broken_agitator_looks_as_if_it_ran_and_mixes_nothing()
    {
        double healthy = IronAfterPulse("P207.no-flow");
        double broken = IronAfterPulse("AG201.broken");
        Assert.InRange(broken, 0.0, 0.1 * healthy);
    }

    private static double IronAfterPulse(string fault)
    {
        RunningPlant plant = Started();
        plant.Inject(fault);
        plant.Command(true, "P202");
        plant.Run(10.0);
        plant.Command(false, "P202");
        plant.Run(90.0);
        Assert.True(plant.Contact("YS201"));
        return plant.Quantity("TK201.iron");
    }

    [Theory]
    [InlineData("XV200.stuck-open", false, "ZSO200", "ZSC200")]
    [InlineData("XV200.stuck-closed", true, "ZSC200", "ZSO200")]
    public void A_stuck_valve_stands_where_its_name_says(string fault, bool command, string made, string broken)
    {
        RunningPlant plant = Started();
        plant.Inject(fault);
        plant.Command(command, "XV200");
        plant.Run(20.0);
        Assert.True(plant.Contact(made));
        Assert.False(plant.Contact(broken));
        plant.Clear(fault);
        plant.Run(20.0);
        Assert.Equal(command, plant.Contact("ZSO200"));
    }

    /// <summary>12 m3/h with the pump on and the valve shut: a fiftieth is 4 L in a minute.</summary>
    [Fact]
    public void A_valve_that_leaks_lets_a_fiftieth_through_while_it_shows_shut()
    {
        RunningPlant plant = Started();
        double before = plant.Total("fill.passed");
        plant.Command(true, "P200");
        plant.Run(60.0);
        Assert.Equal(before, plant.Total("fill.passed"), 1e-6);
        plant.Inject("XV200.leaks");
        plant.Run(60.0);
        Assert.True(plant.Contact("ZSC200"));
        Assert.Equal(before + 4.0, plant.Total("fill.passed"), 0.05);
        plant.Clear("XV200.leaks");
        plant.Run(1.0);
        before = plant.Total("fill.passed");
        plant.Run(60.0);
        Assert.Equal(before, plant.Total("fill.passed"), 1e-6);
    }

    [Fact]
    public void A_valve_that_sticks_moves_a_quarter_of_a_minute_late()
    {
        RunningPlant plant = Started();
        plant.Inject("XV200.sticks");
        plant.Command(true, "XV200");
        plant.Run(14.5);
        Assert.True(plant.Contact("ZSC200"));
        plant.Run(7.0);
        Assert.True(plant.Contact("ZSO200"));
        plant.Clear("XV200.sticks");
        plant.Command(false, "XV200");
        plant.Run(6.2);
        Assert.True(plant.Contact("ZSC200"));
    }

    [Fact]
    public void A_slow_valve_takes_four_times_its_travel()
    {
        RunningPlant plant = Started();
        plant.Inject("XV200.slow");
        plant.Command(true, "XV200");
        plant.Run(22.0);
        Assert.False(plant.Contact("ZSO200"));
        plant.Run(3.0);
        Assert.True(plant.Contact("ZSO200"));
    }

    [Theory]
    [InlineData("AT201.stuck-low", 4.0)]
    [InlineData("AT201.stuck-high", 20.0)]
    [InlineData("AT201.wire-break", 0.0)]
    [InlineData("AT201.failed", 3.5)]
    public void A_failed_transmitter_gives_its_current(string fault, double milliamps)
    {
        RunningPlant plant = Started();
        double before = plant.Milliamps("AT201");
        plant.Inject(fault);
        plant.Run(0.1);
        Assert.Equal(milliamps, plant.Milliamps("AT201"));
        plant.Clear(fault);
        plant.Run(0.1);
        Assert.Equal(before, plant.Milliamps("AT201"), 0.1);
    }

    [Fact]
    public void A_transmitter_described_to_fail_high_does()
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Site("one-pit"));
        plant.Inject("TT301.failed");
        plant.Run(0.1);
        Assert.Equal(21.5, plant.Milliamps("TT301"));
    }

    [Fact]
    public void A_frozen_transmitter_stays_in_range_and_never_moves()
    {
        RunningPlant plant = Started();
        plant.Inject("LT201.frozen");
        double frozen = plant.Milliamps("LT201");
        plant.Command(true, "XV200", "P200");
        plant.Run(300.0);
        Assert.Equal(frozen, plant.Milliamps("LT201"));
        Assert.True(plant.Quantity("TK201.volume") > 2.0);
    }

    [Fact]
    public void A_drifting_transmitter_wanders_by_a_twentieth_of_its_span_an_hour()
    {
        RunningPlant plant = Started();
        plant.Inject("AT201.drift");
        plant.Run(3600.0);
        Assert.Equal(plant.Quantity("TK201.pH") + 0.7, plant.Reading("AT201"), 0.06);
    }

    /// <summary>Half of the span's share: pH 0 to 14 becomes 0 to 28, and 60 C of 10 to 110 C reads as 35 C.</summary>
    [Fact]
    public void A_transmitter_ranged_to_twice_its_span_reads_half_the_share()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(instruments: "TT1: {measures: temperature, in: TK2, low: 10 C, high: 110 C}"));
        plant.Run(1.0);
        Assert.Equal(7.0, plant.Reading("AT1"), 0.05);
        Assert.Equal(60.0, plant.Reading("TT1"), 0.1);
        plant.Inject("AT1.misscaled");
        plant.Inject("TT1.misscaled");
        plant.Run(0.1);
        Assert.Equal(3.5, plant.Reading("AT1"), 0.03);
        Assert.Equal(35.0, plant.Reading("TT1"), 0.1);
        plant.Inject("AT1.wire-break");
        plant.Run(0.1);
        Assert.Equal(0.0, plant.Milliamps("AT1"));
        plant.Clear("AT1.wire-break");
        plant.Clear("AT1.misscaled");
        plant.Run(0.1);
        Assert.Equal(7.0, plant.Reading("AT1"), 0.05);
    }

    [Fact]
    public void Wires_at_each_others_terminals_exchange_the_currents_and_what_fails_in_them()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(instruments: "TT1: {measures: temperature, in: TK2, low: 10 C, high: 110 C, swapped_with: LT1}"));
        plant.Run(1.0);
        (double level, double heat) = (plant.Milliamps("LT1"), plant.Milliamps("TT1"));
        Assert.True(Math.Abs(level - heat) > 5.0);
        Assert.DoesNotContain("LT1.swapped", plant.Plant.Faults.Select(fault => fault.Name));
        plant.Inject("TT1.swapped");
        plant.Run(0.1);
        Assert.Equal(heat, plant.Milliamps("LT1"), 0.01);
        Assert.Equal(level, plant.Milliamps("TT1"), 0.01);
        plant.Inject("LT1.wire-break");
        plant.Run(0.1);
        Assert.Equal(0.0, plant.Milliamps("TT1"));
        Assert.Equal(heat, plant.Milliamps("LT1"), 0.01);
        plant.Clear("TT1.swapped");
        plant.Run(0.1);
        Assert.Equal(0.0, plant.Milliamps("LT1"));
        Assert.Equal(heat, plant.Milliamps("TT1"), 0.01);
    }

    [Fact]
    public void A_fouled_probe_sees_a_change_late()
    {
        Assert.True(FallAfterPulse("AT201.fouled") < 0.6 * FallAfterPulse("P207.no-flow"));
    }

    private static double FallAfterPulse(string fault)
    {
        RunningPlant plant = Started();
        plant.Inject(fault);
        double before = plant.Reading("AT201");
        plant.Command(true, "P202");
        plant.Run(5.0);
        plant.Command(false, "P202");
        plant.Run(30.0);
        return before - plant.Reading("AT201");
    }

    [Fact]
    public void A_switch_with_a_broken_wire_reads_as_the_dangerous_fact_and_a_jammed_one_never_warns()
    {
        RunningPlant plant = Started();
        Assert.True(plant.Contact("LSHH201"));
        plant.Inject("LSHH201.wire-break");
        Assert.False(plant.Contact("LSHH201"));
        plant.Clear("LSHH201.wire-break");
        plant.Inject("LSHH201.stuck-made");
        plant.Command(true, "XV200", "P200");
        plant.Run(4200.0);
        Assert.True(plant.Quantity("TK201.volume") > 13.1);
        Assert.True(plant.Contact("LSHH201"));
        plant.Clear("LSHH201.stuck-made");
        Assert.False(plant.Contact("LSHH201"));
    }

    [Fact]
    public void An_emergency_stop_is_operated_and_released()
    {
        RunningPlant plant = Started();
        Assert.True(plant.Contact("ES201"));
        plant.Inject("ES201.operated");
        Assert.False(plant.Contact("ES201"));
        plant.Clear("ES201.operated");
        Assert.True(plant.Contact("ES201"));
    }

    [Fact]
    public void An_empty_reagent_is_pumped_as_air()
    {
        RunningPlant plant = Started();
        plant.Inject("FERRIC.empty");
        plant.Command(true, "P202");
        plant.Run(60.0);
        Assert.Equal(0.0, plant.Total("FERRIC.used"), 0.01);
        plant.Clear("FERRIC.empty");
        plant.Run(60.0);
        Assert.Equal(1.5, plant.Total("FERRIC.used"), 0.01);
    }

    [Theory]
    [InlineData("FERRIC.half-strength", 0.5)]
    [InlineData("FERRIC.double-strength", 2.0)]
    public void A_reagent_of_the_wrong_strength_brings_so_much_less_or_more(string fault, double factor)
    {
        Assert.Equal(factor, IronAfterPulse(fault) / IronAfterPulse("P207.no-flow"), 0.01);
    }

    [Fact]
    public void A_store_runs_empty_and_its_low_switch_tells_before()
    {
        PlantModel model = RunningPlant.Site("marlpit-wharf");
        RunningPlant plant = RunningPlant.Start(model with { Reagents = [.. model.Reagents.Select(reagent => reagent with { StoreLitres = 42.0 })] });
        plant.Command(true, "XV207", "P207", "P202");
        Assert.True(plant.RunUntil(() => !plant.Contact("LSL202"), 120.0));
        Assert.Equal(40.0, plant.Quantity("FERRIC.store"), 0.1);
        plant.Run(1800.0);
        Assert.Equal(0.0, plant.Quantity("FERRIC.store"));
        Assert.Equal(42.0, plant.Total("FERRIC.used"), 0.01);
    }

    [Fact]
    public void A_blocked_sample_loop_shows_low_flow_and_the_probe_sees_what_stands_in_it()
    {
        RunningPlant plant = Started();
        Assert.True(plant.Contact("FSL205"));
        double before = plant.Reading("AT201");
        plant.Inject("SL205.blocked");
        plant.Command(true, "P202");
        plant.Run(60.0);
        Assert.False(plant.Contact("FSL205"));
        Assert.Equal(before, plant.Reading("AT201"), 0.1);
        Assert.True(plant.Quantity("TK201.pH") < before - 1.0);
    }

    [Fact]
    public void A_blocked_dosing_line_passes_nothing()
    {
        RunningPlant plant = Started();
        plant.Command(true, "AG203");
        plant.Inject("L206.blocked");
        plant.Command(true, "P203", "XV206");
        plant.Run(30.0);
        Assert.Equal(0.0, plant.Total("LIME.used"), 0.01);
        Assert.Equal(0.0, plant.Total("flush.passed"), 0.02);
    }

    [Fact]
    public void Slurry_that_stands_in_its_line_sets_and_a_flushed_line_does_not()
    {
        foreach (bool flushed in new[] { true, false })
        {
            RunningPlant plant = Started();
            plant.Command(true, "AG203", "P203");
            plant.Run(30.0);
            plant.Command(false, "P203");
            plant.Command(flushed, "XV206");
            plant.Run(120.0);
            plant.Command(false, "XV206");
            plant.Run(1900.0);
            Assert.Equal(flushed ? 0.0 : 1.0, plant.Quantity("L206.blocked"));
        }
    }

    [Fact]
    public void Slurry_that_nobody_stirs_loses_its_strength()
    {
        RunningPlant plant = Started();
        plant.Run(900.0);
        plant.Command(true, "P203");
        plant.Run(60.0);
        double settled = plant.Quantity("L206.lime");
        plant.Command(true, "AG203");
        plant.Run(120.0);
        Assert.Equal(0.3, settled / plant.Quantity("L206.lime"), 0.02);
    }

    [Fact]
    public void Every_fault_of_a_plant_can_come_and_go()
    {
        foreach (string site in new[] { "one-pit", "cyanide-reactor", "sludge-house", "marlpit-wharf" })
        {
            RunningPlant plant = RunningPlant.Start(RunningPlant.Site(site));
            Assert.Equal(plant.Plant.Faults.DistinctBy(fault => fault.Name), plant.Plant.Faults);
            Assert.True(plant.Plant.Faults.Length > 40);
            foreach (string fault in plant.Plant.Faults.Select(fault => fault.Name))
            {
                plant.Inject(fault);
                plant.Run(2.0);
                plant.Clear(fault);
                plant.Run(1.0);
            }
        }
    }
}
