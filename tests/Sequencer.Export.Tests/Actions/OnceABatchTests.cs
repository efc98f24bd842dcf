using Sequencer.Proof;

namespace Sequencer.Export.Tests.Actions;

/// <summary>Once a batch on every run: with holds, restarts, losses of power, steps entered again and the operator's hand.</summary>
public sealed class OnceABatchTests
{
    private const string Procedure = """
          step 10 "Dose"
            dose PD1 amount 0.3 L once a batch
            limit 1 h then hold "Too long"
            go 20 when PD1 dosed
          step 20 "Rest"
            limit 1 h then hold "Too long"
            go 10 when S3
            go finish when S1
        """;

    private static ActionProgram Program => new(
        """
        output PD1 motor at %QX1.0 "Lime pump" safe stopped delivers LIME at 60.0 L/min
        reagent LIME "Lime"
        interlock I1 "Mixed" PD1 blocked unless S2
        require R1 "No more than the amount" never PD1.total > 0.3 L
        require R2 "Not a scan less is the most" never PD1.total > 0.2 L
        require R3 "Nothing is skipped" always PD1.total >= 0.3 L while at step 20
        """,
        Procedure);

    [Fact]
    public void No_batch_gets_more_than_the_amount() => Assert.IsType<Holds>(Program.Prove("R1"));

    [Fact]
    public void The_amount_is_reached() => Assert.IsType<Fails>(Program.Prove("R2"));

    [Fact]
    public void A_batch_that_goes_on_has_had_all_of_it() => Assert.IsType<Holds>(Program.Prove("R3"));
}
