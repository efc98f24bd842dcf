using Sequencer.Language.Programs;
using Sequencer.Lowering.Tests.States;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>A step with <c>only if</c> is judged in the scan of its entry and, passed over, lasts that one scan and drives nothing.</summary>
public sealed class PassedOverTests
{
    private const string Flush = """
          step 10 "Batch"
            run M1
            limit 1 h then hold "Too long"
            go finish when S1
        holding
          step 110 "Flush" only if S3
            run M2
            limit 1 s then go finish "Too long"
            go 111 when S2
          step 111 "Drain" only if LT1 > 5.00 m3
            run M2
            limit 1 s then go finish "Too long"
            go finish when S2
        """;

    [Fact]
    public void A_step_whose_condition_does_not_hold_drives_nothing_and_leads_on()
    {
        ProgramBench bench = SectionBench.In(ProceduralState.Holding, "", Flush);
        Assert.Equal("1 0", $"{bench["U.step110.active"]} {bench["M2"]}");
        bench.Scan();
        Assert.Equal("0 1 0", $"{bench["U.step110.active"]} {bench["U.step111.active"]} {bench["M2"]}");
        Assert.Equal(ProceduralState.Holding, bench.Scan().State);
        Assert.Equal(ProceduralState.Held, bench.Scan().State);
    }

    [Fact]
    public void It_is_judged_on_entry_and_not_again()
    {
        ProgramBench bench = SectionBench.In(ProceduralState.Running, "", Flush);
        bench.Set("S3.contact", 1);
        bench.Press("hold").Set("S3.contact", 0);
        Assert.Equal(1, bench.Scan(3)["M2"]);

        ProgramBench passed = SectionBench.In(ProceduralState.Holding, "", Flush);
        passed.Set("S3.contact", 1);
        Assert.Equal(0, passed.Scan()["M2"]);
    }

    [Fact]
    public void A_condition_that_is_unknown_passes_the_step_over()
    {
        ProgramBench bench = SectionBench.In(ProceduralState.Running, "", Flush);
        bench.Set("LT1", 800);
        bench.Set("LT1.fault", 1);
        bench.Scan(10);
        bench.Press("hold").Scan();

        Assert.Equal("1 0", $"{bench["U.step111.active"]} {bench["M2"]}");
    }

    [Fact]
    public void In_a_batch_the_step_behind_begins_one_scan_later()
    {
        ProgramBench bench = BenchPrograms.Started("", """
              step 10 "Maybe" only if S1
                run M1
                limit 1 h then hold "Too long"
                go 20 when S2
              step 20 "Then"
                run M2
                limit 1 h then hold "Too long"
                go finish when S2
            """);
        Assert.Equal("1 0 0", $"{bench["U.step10.active"]} {bench["M1"]} {bench["M2"]}");
        bench.Scan();
        Assert.Equal("0 0 1", $"{bench["U.step10.active"]} {bench["M1"]} {bench["M2"]}");
    }
}
