using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Tests.Tank;
using Sequencer.Text;

namespace Sequencer.Simulation.Tests;

public sealed class ClosedLoopTests
{
    [Fact]
    public void A_scan_reads_the_plant_before_it_steps_and_moves_it_after()
    {
        TankPlant plant = new() { Volume = 1.5 };
        ClosedLoop loop = TankRun.Loop(plant);
        ValueSource level = loop.Find("LT101") ?? throw new InvalidOperationException();
        loop.Scan();
        Assert.Equal(1.5, loop.Value(level), 9);
        Assert.Equal(0, plant.Time);
        loop.Advance();
        Assert.Equal(0.1, plant.Time, 9);
        Assert.Equal(1, loop.ScanNumber);
    }

    [Fact]
    public void A_switch_shows_its_physical_fact_however_it_is_wired()
    {
        ClosedLoop loop = TankRun.Loop(new TankPlant { Volume = 5.6 });
        ValueSource high = loop.Find("LSHH101") ?? throw new InvalidOperationException();
        loop.Scan();
        Assert.Equal(1, loop.Value(high));
        Assert.True(loop.AlarmRaised(0));
    }

    [Fact]
    public void Without_power_every_output_is_off_and_the_first_scan_after_it_is_told()
    {
        ClosedLoop loop = TankRun.Loop();
        int returned = loop.System.Inputs.Single(input => input.Name == "power.returned").Index;
        int start = loop.System.Inputs.Single(input => input.Name == "R101.start").Index;
        loop.SetInput(start, 1);
        Turn(loop, 2);
        Assert.True(loop.OutputOn(0));
        loop.CutPower();
        loop.Scan();
        Assert.False(loop.OutputOn(0));
        loop.Advance();
        loop.RestorePower();
        loop.Scan();
        Assert.Equal(1, loop.Input(returned));
        loop.Advance();
        loop.Scan();
        Assert.Equal(0, loop.Input(returned));
        Assert.Equal((long)UnitState.Held, loop.State(loop.Units[0].StatePlace));
    }

    [Fact]
    public void What_the_plant_lacks_is_reported_by_tag()
    {
        DiagnosticBag diagnostics = new();
        TankPlant plant = new() { Actuators = ["P101", "P102", "P299"], Contacts = ["LSHH199"], Transmitters = [new("AT101", 0, 14, "pH")] };
        Assert.Null(TankRun.Join(plant, TankProgram.Site, diagnostics));
        Assert.Equal(
            ["SEQ0601 LSHH101", "SEQ0601 LT101", "SEQ0602 P201", "SEQ0603 LSHH199"],
            diagnostics.InOrder().Select(diagnostic => $"{diagnostic.Code} {diagnostic.Message.Split('`')[1]}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_transmitter_of_another_range_is_refused()
    {
        DiagnosticBag diagnostics = new();
        TankPlant plant = new() { Transmitters = [new("LT101", 0, 5, "m3"), new("AT101", 0, 14, "pH")] };
        Assert.Null(TankRun.Join(plant, TankProgram.Site, diagnostics));
        Diagnostic only = Assert.Single(diagnostics.InOrder());
        Assert.Equal("SEQ0605", only.Code);
        Assert.Contains("0.000 .. 6.000 m3", only.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_transmitter_in_another_unit_of_the_same_range_is_taken()
    {
        DiagnosticBag diagnostics = new();
        TankPlant plant = new() { Transmitters = [new("LT101", 0, 6000, "L"), new("AT101", 0, 14, "pH")] };
        Assert.NotNull(TankRun.Join(plant, TankProgram.Site, diagnostics));
        Assert.Empty(diagnostics.InOrder());
    }

    [Fact]
    public void A_parameter_without_a_default_is_refused()
    {
        DiagnosticBag diagnostics = new();
        SiteMetadata site = TankProgram.Site with { Signals = [.. TankProgram.Site.Signals.Select(signal => signal with { Default = null })] };
        Assert.Null(TankRun.Join(new TankPlant(), site, diagnostics));
        Assert.Equal("SEQ0604", Assert.Single(diagnostics.InOrder()).Code);
    }

    [Fact]
    public void Nothing_is_allocated_in_a_scan()
    {
        TransitionSystem system = TankProgram.System();
        CompiledStepper stepper = new(system, ClosedLoop.Observed(system, TankProgram.Site));
        ClosedLoop loop = ClosedLoop.Join(stepper, new TankPlant(), TankProgram.Site, TankRun.Place, new DiagnosticBag()) ?? throw new InvalidOperationException();
        Turn(loop, 100);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Turn(loop, 1000);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    private static void Turn(ClosedLoop loop, int scans)
    {
        for (int scan = 0; scan < scans; scan++)
        {
            loop.Scan();
            loop.Advance();
        }
    }
}
