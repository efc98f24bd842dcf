using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Parameters;

/// <summary>A batch works with the copy that its start took; a setting out of range refuses the start.</summary>
public sealed class SettingTests
{
    private const string Volume = "parameter volume = 5.00 m3 from 2.00 m3 to 8.00 m3 \"Volume\"";

    private const string Fill = """
          step 10 "Fill"
            run M1
            limit 1 h then hold "Too long"
            go finish when LT1 >= volume
        """;

    [Fact]
    public void A_change_in_mid_batch_does_not_count()
    {
        ProgramBench bench = BenchPrograms.Bench(Volume, Fill).Scan();
        bench.Set("U.volume.setting", 300);
        bench.Press("start");
        bench.Set("U.volume.setting", 700);
        bench.Set("LT1", 300);

        Assert.Equal(ProceduralState.Complete, bench.Scan().State);
        Assert.Equal(300, bench["U.volume.batch"]);
    }

    [Theory]
    [InlineData(200, ProceduralState.Running)]
    [InlineData(800, ProceduralState.Running)]
    [InlineData(199, ProceduralState.Idle)]
    [InlineData(801, ProceduralState.Idle)]
    [InlineData(int.MinValue, ProceduralState.Idle)]
    [InlineData(int.MaxValue, ProceduralState.Idle)]
    public void A_setting_out_of_range_refuses_the_start(long setting, ProceduralState expected)
    {
        ProgramBench bench = BenchPrograms.Bench(Volume, Fill).Scan();
        bench.Set("U.volume.setting", setting);

        Assert.Equal(expected, bench.Press("start").State);
        Assert.Equal(expected == ProceduralState.Idle ? 1 : 0, bench["alarm U.start.setting"]);
    }

    [Fact]
    public void A_start_condition_that_is_not_sure_refuses_the_start_with_its_message()
    {
        ProgramBench bench = BenchPrograms.Bench("start only when LT1 < 1.00 m3 \"Not empty\"").Scan();
        bench.Set("LT1.fault", 1);
        bench.Scan(5);

        Assert.Equal(ProceduralState.Idle, bench.Press("start").State);
        Assert.Equal(1, bench["alarm U.start1"]);
        bench.Set("LT1.fault", 0);
        bench.Scan();
        Assert.Equal(ProceduralState.Running, bench.Press("start").State);
    }
}
