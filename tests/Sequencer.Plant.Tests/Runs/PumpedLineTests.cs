using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A pump in its pipe, and a tank with a cone for a bottom.</summary>
public sealed class PumpedLineTests
{
    /// <summary>The pump gives 12 m at 10 m3/h and 16 m shut; the pipe is that of 52.5 mm, 50 m, 0.045 mm rough that takes 1.814 m of 10 m3/h.</summary>
    private static readonly PumpedDescription Pump = new(16.0, 10.0 / 3.6, 12.0, 10.186, 0.0525, 50.0, 0.045e-3, 0.0);

    private static readonly PlantModel Model = RunningPlant.Model("""
        plant: 1
        name: Pumped tank
        ambient: 20 C
        supplies:
          water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
        tanks:
          TK1:
            area: 2 m2
            levels: [{at: 0.6 m, holds: 0.2 m3}, {at: 1.2 m, holds: 0.8 m3}]
            overflow: 5 m3
            heel: 20 L
            starts: {volume: 1.8 m3, water: water}
            mixing: {dead_time: 1 s, lag: 5 s}
        pumps:
          P1: {starts_in: 1 s, speed_from: SC1}
          P2: {starts_in: 1 s}
        valves:
          XV1: {travel: 2 s}
        lines:
          fast: {from: TK1, to: sewer, through: [P1], pumped: {shut_off: 16 m, rated: 10 m3/h, head: 12 m, lift: 2 m, bore: 52.5 mm, length: 50 m, fittings: 4}}
          high: {from: TK1, to: sewer, through: [P2, XV1], pumped: {shut_off: 16 m, rated: 10 m3/h, head: 12 m, lift: 2 m, bore: 52.5 mm, length: 50 m}}
        transmitters:
          LT1: {measures: level, in: TK1, low: 0 m, high: 3 m}
        """);

    /// <summary>12 m less 1.814 m of friction lift 10.186 m: there pump and pipe meet at 10 m3/h. The head of friction is computed from Colebrook's equation.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_pump_and_its_pipe_meet_where_their_heads_are_equal()
    {
        PumpedLine line = new(Pump);
        Within(10.0, line.Flow(1.0, 1.0, 0.0) * 3.6, 0.01);
        Within(0.0, line.Flow(0.75, 1.0, 0.0), 0.0);
    }

    /// <summary>Without lift all heads go with the square of the flow: half the speed gives half of it (affinity).</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Without_lift_the_flow_goes_with_the_speed()
    {
        PumpedLine line = new(Pump with { LiftMetres = 0.0 });
        Within(0.5, line.Flow(0.5, 1.0, 0.0) / line.Flow(1.0, 1.0, 0.0), 1e-12);
    }

    /// <summary>
    /// 25 L/s at 8.41 m and 1725 rpm, slowed to 1140 rpm: 16.5 L/s, in a pipe without lift that takes 8.41 m of 25 L/s. Source: set problem; the speed follows from its flows.
    /// </summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_slower_pump_gives_less()
    {
        RunningPlant tank = RunningPlant.Start(RunningPlant.Model("""
            plant: 1
            name: Slowed pump
            ambient: 20 C
            supplies:
              water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
            tanks:
              TK1: {area: 5000 m2, overflow: 500 m3, heel: 1 L, starts: {volume: 50 m3, water: water}, mixing: {dead_time: 0 s, lag: 5 s}}
            pumps:
              P1: {starts_in: 50 ms, speed_from: SC1}
            lines:
              out: {from: TK1, to: sewer, through: [P1], pumped: {shut_off: 12 m, rated: 25 L/s, head: 8.41 m, bore: 200 mm, length: 1 m, fittings: 260.4}}
            """));
        tank.Command(true, "P1");
        tank.Plant.SetValue(0, 1.0);
        tank.Run(5.0);
        Assert.Equal(25.0, tank.Quantity("out.flow") / 60.0, 0.1);
        tank.Plant.SetValue(0, 1140.0 / 1725.0);
        tank.Run(5.0);
        Within(16.5, tank.Quantity("out.flow") / 60.0, 0.1);
    }

    [Fact]
    public void More_level_more_flow_and_a_throttled_valve_less()
    {
        PumpedLine line = new(Pump);
        Assert.True(line.Flow(1.0, 1.0, 1.0) > line.Flow(1.0, 1.0, 0.0));
        Assert.True(line.Flow(1.0, 0.1, 0.0) < 0.7 * line.Flow(1.0, 1.0, 0.0));
        Assert.Equal(0.0, line.Flow(1.0, 0.0, 0.0));
    }

    /// <summary>0.8 m3 up to 1.2 m, and 1.0 m3 on 2 m2 above.</summary>
    [Fact]
    public void The_level_over_a_cone_follows_its_table()
    {
        RunningPlant tank = RunningPlant.Start(Model);
        tank.Run(0.1);
        Assert.Equal(1.7, tank.Quantity("TK1.level"), 1e-9);
        Assert.Equal(1.7, tank.Reading("LT1"), 1e-6);
        tank.Command(true, "P2", "XV1");
        Assert.True(tank.RunUntil(() => tank.Quantity("TK1.volume") <= 0.5, 3600.0));
        Assert.Equal(0.9, tank.Quantity("TK1.level"), 0.005);
        Assert.True(tank.RunUntil(() => tank.Quantity("TK1.volume") <= 0.1, 3600.0));
        Assert.Equal(0.3, tank.Quantity("TK1.level"), 0.01);
        Assert.Equal(0.0, tank.Balances().Volume, 1e-9);
    }

    [Fact]
    public void A_pump_that_empties_its_tank_runs_dry_and_the_time_is_told()
    {
        RunningPlant tank = RunningPlant.Start(Model);
        tank.Command(true, "P2", "XV1");
        Assert.True(tank.RunUntil(() => tank.Quantity("TK1.volume") < 0.0201, 3600.0));
        double before = tank.Total("high.ran_dry");
        tank.Run(100.0);
        Assert.InRange(before, 0.0, 1.0);
        Assert.Equal(100.0, tank.Total("high.ran_dry") - before, 0.5);
        Assert.Equal(0.0, tank.Quantity("high.flow"), 1e-9);
        tank.Command(false, "P2");
        tank.Run(2.0);
        before = tank.Total("high.ran_dry");
        tank.Run(60.0);
        Assert.Equal(before, tank.Total("high.ran_dry"), 1e-9);
    }
}
