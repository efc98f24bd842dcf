using Sequencer.Control.TransitionSystems;

namespace Sequencer.Lowering.Tests.Units;

/// <summary>What one unit sees of another: what that one was at the end of the last scan (spec/meaning.md, Several units).</summary>
public sealed class PublishedFactTests
{
    /// <summary>B's valve is blocked while the condition holds, and is asked for by hand.</summary>
    private static ProgramBench Blocked(string condition, string declarationsOfA = "")
    {
        ProgramBench bench = new(
            UnitPrograms.Unit("A", declarationsOfA, UnitPrograms.TwoSteps("A")),
            UnitPrograms.Unit("B", $"interlock I1 \"Apart\" XB blocked while {condition}", UnitPrograms.TwoSteps("B")));
        bench.Set("SA2.contact", 1);
        bench.Set("SB2.contact", 1);
        bench.Set("XB.manual", 1);
        bench.Set("XB.manual.demand", 1);
        bench.Scan(2);
        return bench;
    }

    [Theory]
    [InlineData("A at step 10")]
    [InlineData("A is Running")]
    [InlineData("A.MA running")]
    public void A_step_a_state_and_an_output_are_seen_in_the_scan_after(string condition)
    {
        ProgramBench bench = Blocked(condition);
        Assert.Equal(1, bench["XB"]);
        bench.PressAt("A", "start");
        Assert.Equal(1, bench["A.state"]);
        Assert.Equal(1, bench["XB"]);
        Assert.Equal(0, bench.Scan()["XB"]);
    }

    [Fact]
    public void A_switch_is_seen_in_the_scan_after()
    {
        ProgramBench bench = Blocked("A.SA1");
        bench.Set("SA1.contact", 1);
        Assert.Equal(1, bench.Scan()["XB"]);
        Assert.Equal(0, bench.Scan()["XB"]);
    }

    [Fact]
    public void A_reading_that_is_not_usable_elsewhere_is_unknown_here()
    {
        ProgramBench bench = Blocked("A.LTA > 5.00 m3");
        Assert.Equal(1, bench["XB"]);
        bench.Set("LTA.fault", 1);
        Assert.Equal(1, bench.Scan(4)["XB"]);
        Assert.Equal(0, bench.Scan()["XB"]);
    }

    [Fact]
    public void A_published_fact_is_a_scan_old()
    {
        const string fact = "fact FULL \"Tank is full\" when LTA > 5.00 m3";
        ProgramBench bench = new(
            UnitPrograms.Unit("A", fact, UnitPrograms.TwoSteps("A")),
            UnitPrograms.Unit("B", "interlock I1 \"Apart\" XB blocked while A.FULL", UnitPrograms.TwoSteps("B")));
        bench.Set("XB.manual", 1);
        bench.Set("XB.manual.demand", 1);
        Assert.Equal(1, bench.Scan()["XB"]);
        bench.Set("LTA", 600);
        Assert.Equal(1, bench.Scan()["XB"]);
        Assert.Equal(0, bench.Scan()["XB"]);
    }

    /// <summary>A trip that another unit's normally closed switch or fact feeds would else be latched by every return of power.</summary>
    [Theory]
    [InlineData("A.FULL")]
    [InlineData("A.SA2")]
    [InlineData("A.LTA > 5.00 m3")]
    public void The_return_of_power_alone_changes_nothing_of_what_is_seen(string condition)
    {
        ProgramBench bench = Blocked(condition, "fact FULL \"Tank is full\" when LTA > 5.00 m3");
        Assert.Equal(1, bench["XB"]);
        Assert.Equal(1, bench.LosePower()["XB"]);
    }

    [Fact]
    public void The_names_of_protections_carry_their_unit()
    {
        ProgramBench bench = Blocked("A.SA1");
        Assert.Equal(0, bench["B.I1.blocks"]);
    }

    /// <summary>Requirements speak of the plant: never both in one scan, whoever sees what when.</summary>
    [Fact]
    public void A_requirement_sees_the_other_unit_in_this_scan()
    {
        ProgramBench bench = new(
            UnitPrograms.Unit("A", "", UnitPrograms.TwoSteps("A")),
            UnitPrograms.Unit("B", "require H1 \"Together\" never XB and A.SA1", UnitPrograms.TwoSteps("B")));
        bench.Set("XB.manual", 1);
        bench.Set("XB.manual.demand", 1);
        Assert.Equal(1, bench.Scan()["B.H1"]);
        bench.Set("SA1.contact", 1);
        Assert.Equal(0, bench.Scan()["B.H1"]);
    }

    /// <summary>Two units that name each other give the same runs in either order of the site.</summary>
    [Fact]
    public void The_order_of_units_never_matters()
    {
        string a = UnitPrograms.Unit("A", "interlock I1 \"Apart\" MA, XA blocked while B.MB or B at step 20", UnitPrograms.TwoSteps("A"));
        string b = UnitPrograms.Unit("B", "interlock I1 \"Apart\" MB, XB blocked while A.MA or A.SA1", UnitPrograms.TwoSteps("B"));
        ProgramBench one = new(a, b);
        ProgramBench other = new(b, a);
        Random random = new(1);
        string[] inputs = [.. one.System.Inputs.Where(input => input.Sort == Sort.Boolean).Select(input => input.Name)];
        string[] states = [.. one.System.States.Select(state => state.Variable.Name)];
        Assert.Equal(states.Order(StringComparer.Ordinal), other.System.States.Select(state => state.Variable.Name).Order(StringComparer.Ordinal));
        for (int scan = 0; scan < 2_000; scan++)
        {
            foreach (string input in inputs.Where(_ => random.Next(10) == 0))
            {
                long value = random.Next(2);
                one.Set(input, value);
                other.Set(input, value);
            }

            one.Scan();
            other.Scan();
            foreach (string name in states.Concat(["MA", "XA", "MB", "XB"]))
            {
                Assert.True(one[name] == other[name], $"scan {scan}: {name} is {one[name]} and {other[name]}");
            }
        }
    }
}
