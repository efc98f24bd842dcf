namespace Sequencer.Export.Tests.Constructs;

/// <summary>What conditions see of a prompt is its answer at the start of the scan, wherever in the text they stand.</summary>
public sealed class AnswerTextTests
{
    private const string Asks = """
          step 10 "Only"
            prompt Q1 "Clear?" answers "yes", "no" role Operator, limit 10 s then hold "Nobody answered"
            run M1 while Q1 answered "yes"
            limit 20 s then hold "Too long"
            go finish when S1
        """;

    [Theory]
    [InlineData("latch SEEN \"Seen\" set when at step 10 and Q1 answered \"yes\" and S2 clear when S3")]
    [InlineData("fact SEEN \"Seen\" when Q1 answered \"yes\" and S2")]
    [InlineData("interlock I1 \"Not after a no\" M1 blocked while Q1 answered \"no\"")]
    [InlineData("alarm A1 \"Answered\" when Q1 answered \"yes\"")]
    public void A_memory_of_an_answer_is_proved_equal(string declaration) => ConstructExport.IsProvedEqual(ConstructExport.Of(declaration, Asks));
}
