using Sequencer.Text;

namespace Sequencer.StructuredText.Tests;

/// <summary>The example of spec/structured-text.md: a unit as it is exported.</summary>
public sealed class ExampleTests
{
    [Fact]
    public void Every_block_of_the_page_is_clean()
    {
        List<(string Expected, string Text)> blocks = [.. SpecificationPages.Blocks(SpecificationPages.Subset)];
        Assert.NotEmpty(blocks);
        foreach ((string expected, string text) in blocks)
        {
            Assert.Equal("clean", expected);
            ReadingResult result = Scans.Read(text, scanMilliseconds: null);
            Assert.True(result.Diagnostics.IsEmpty, DiagnosticRenderer.Render(result.Diagnostics));
        }
    }

    [Fact]
    public void Its_variables_are_inputs_states_and_outputs_by_name()
    {
        Scans unit = Example();
        Assert.Equal(100, unit.System.ScanMilliseconds);
        Assert.Equal(
            ["power.returned", "LT101", "LSHH101_contact", "start", "hold", "restart", "abort_command", "reset", "fill_volume_setting"],
            unit.System.Inputs.Select(input => input.Name));
        Assert.Equal(["XV101", "P101", "FillingSlow"], unit.System.Outputs.Select(output => output.Name));
        Assert.Equal(
            ["R101.state", "R101.active", "R101.step_clock", "R101.fill_volume", "R101.start_edge.M", "R101.restart_edge.M", "R101.opened.scans", "R101.opened.last"],
            unit.System.States.Select(state => state.Variable.Name));
        Assert.Equal([true, true, true, true, false, false, false, false], unit.System.States.Select(state => state.Retained));
    }

    [Fact]
    public void It_fills_opens_its_valve_before_its_pump_and_completes()
    {
        Scans unit = Example();
        unit.Scan(("LSHH101_contact", 1), ("fill_volume_setting", 4000), ("start", 1));
        Assert.Equal((1, 0), (unit["XV101"], unit["P101"]));
        for (int scan = 0; scan < 149; scan++)
        {
            unit.Scan();
        }

        Assert.Equal(0, unit["P101"]);
        Assert.Equal(1, unit.Scan()["P101"]);
        unit.Scan(("LSHH101_contact", 0));
        Assert.Equal((0, 0), (unit["XV101"], unit["P101"]));
        unit.Scan(("LSHH101_contact", 1), ("LT101", 4000));
        Assert.Equal((20, 0), (unit["R101.active"], unit["XV101"]));
        for (int scan = 0; scan < 601; scan++)
        {
            unit.Scan();
        }

        Assert.Equal(2, unit["R101.state"]);
    }

    [Fact]
    public void A_return_of_power_keeps_its_step_and_begins_its_timer_again()
    {
        Scans unit = Example();
        unit.Scan(("LSHH101_contact", 1), ("fill_volume_setting", 4000), ("start", 1));
        for (int scan = 0; scan < 200; scan++)
        {
            unit.Scan();
        }

        Assert.Equal(1, unit["P101"]);
        unit.Scan(("power.returned", 1));
        Assert.Equal((10, 1, 0), (unit["R101.active"], unit["XV101"], unit["P101"]));
    }

    private static Scans Example() => Scans.Of(SpecificationPages.Blocks(SpecificationPages.Subset).First().Text);
}
