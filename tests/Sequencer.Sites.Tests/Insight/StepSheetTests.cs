using Sequencer.Language.Programs;
using Sequencer.Sites.Insight;

namespace Sequencer.Sites.Tests.Insight;

/// <summary>What the outputs of a made-up unit do, worked out by hand.</summary>
public sealed class StepSheetTests
{
    private const string Program = """
        language 1
        unit U "Bench"

        input LT1  0 .. 10.00 m3  at %IW0    "Level"  bad after 0.2 s
        input S1   switch         at %IX0.0  "Full"
        input S2   switch         at %IX0.1  "Wet"
        output M1  motor  at %QX0.0  "Pump"      safe stopped
        output M2  motor  at %QX0.1  "Fan"       safe running while S2  emergency stopped
        output M3  motor  at %QX0.2  "Agitator"  safe stopped  held running

        interlock I1 "Level" M1 blocked unless LT1 > 1.00 m3
        trip T1 "Lost" when not LT1 usable stays 1 s then hold

        procedure
          step 10 "Fill"
            run M1
            keep M3 running until step 30
            limit 1 h then hold "Slow"
            go 20 when S1
          step 20 "Stir"
            run M2
            limit 1 h then alarm "Slow"
            go 30 when LT1 > 5.00 m3
          step 30 "Rest"
            limit 2 min then go 10 "Over"
            go finish when not S1
        """;

    private static readonly InsightBench Bench = new(Program);

    private static readonly StepSheet Sheet = StepSheet.Of(Bench.Site, Bench.System, Bench.Verdicts, Bench.Questions, CancellationToken.None).Single();

    [Fact]
    public void At_work_an_output_is_on_that_nothing_holds_back_and_maybe_on_where_an_interlock_may()
    {
        Is(Row(10).Works, on: ["M3"], maybe: ["M1", "M2"]);
        Is(Row(20).Works, on: ["M2", "M3"], maybe: []);
        Is(Row(30).Works, on: [], maybe: ["M2"]);
    }

    [Fact]
    public void A_hold_gives_held_and_safe_values()
    {
        Is(Row(10).Hold, on: ["M3"], maybe: ["M2"]);
        Same([ProceduralState.Holding], Row(10).Hold!.States);
        Is(Row(10).Held, on: ["M3"], maybe: ["M2"]);
    }

    [Fact]
    public void A_stop_and_an_abort_give_safe_values()
    {
        Is(Row(20).Stop, on: [], maybe: ["M2"]);
        Same([ProceduralState.Stopping], Row(20).Stop!.States);
        Is(Row(20).Abort, on: [], maybe: ["M2"]);
        Same([ProceduralState.Aborting], Row(20).Abort!.States);
    }

    [Fact]
    public void When_the_power_comes_back_the_unit_is_held()
    {
        Same([ProceduralState.Held], Row(20).PowerLoss!.States);
        Is(Row(20).PowerLoss, on: ["M3"], maybe: ["M2"]);
    }

    [Fact]
    public void A_bad_reading_stops_what_needs_it_and_is_waited_for_until_the_limit()
    {
        InstrumentRow first = Sheet.Instruments.Single(row => row.Step.Number == 10 && row.Tag == "LT1");
        Assert.False(first.Leaves);
        Same(["M1"], first.Bad!.StopsOf(Row(10).Works!));
        Same(["go 30"], Sheet.Instruments.Single(row => row.Step.Number == 20 && row.Tag == "LT1").Waits);
        Same(["go finish"], Sheet.Instruments.Single(row => row.Step.Number == 30 && row.Tag == "S1").Waits);
    }

    [Fact]
    public void What_looks_at_an_instrument_alone_is_told()
    {
        InstrumentUse level = Sheet.Uses.Single(use => use.Tag == "LT1");
        Same(["I1"], level.Interlocks);
        Same(["T1"], level.Trips);
        Same(["I1", "T1"], level.Alone);
    }

    private static StepRow Row(int step) => Sheet.Rows.Single(row => row.Step.Number == step);

    private static void Same<T>(T[] expected, IEnumerable<T> actual) => Assert.Equal(expected, actual.ToArray());

    private static void Is(Situation? what, string[] on, string[] maybe)
    {
        Assert.NotNull(what);
        Same(on, what.On);
        Same(maybe, what.Maybe);
    }
}
