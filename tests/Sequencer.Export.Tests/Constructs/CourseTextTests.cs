namespace Sequencer.Export.Tests.Constructs;

/// <summary>Counts, calibration, the limit of Held, restart points and steps let go by hand, as text.</summary>
public sealed class CourseTextTests
{
    private const string TwoSteps = """
          step 10 "One"
            run M1
            restart at step 10
            limit 10 s then hold "Too long"
            go 20 when S1
          step 20 "Two"
            run M2
            restart at step 10
            limit 10 s then go finish "Too long"
            go finish when S2 stays 1 s
        """;

    private const string Branches = """
          step 10 "One"
            limit 10 s then hold "Too long"
            go 20 and 30 when S1
          step 20 "Left"
            run M1
            restart at step 20
            limit 10 s then hold "Too long"
            go 25 when S2
          step 25 "Left still"
            restart at step 20
            limit 10 s then hold "Too long"
          step 30 "Right"
            run M2
            limit 10 s then hold "Too long"
          join 25, 30 to finish when S3
        """;

    [Theory]
    [InlineData("count C \"Count\" 0 .. 6.0 mm each S2 takes 2.5 mm, set to 6.0 mm when at step 10\ninterlock I1 \"Enough\" M2 blocked while C < 1.0 mm", ConstructExport.OneStep)]
    [InlineData("count C \"Count\" 0 .. 9.00 m3 each LT1 > 5.00 m3 adds 0.40 m3\ninterlock I1 \"Enough\" M2 blocked while C > LT1", ConstructExport.OneStep)]
    [InlineData("count C \"Count\" 0 .. 1.00 m3 each S2 adds 0.01 m3, over 4 s in 4 parts\ninterlock I1 \"Enough\" M2 blocked while C >= 0.03 m3", ConstructExport.OneStep)]
    [InlineData("count C \"Count\" 0 .. 200.000 m3 each S2 adds 0.010 m3, over 24 h in 24 parts\ninterlock I1 \"Enough\" M2 blocked while C >= 110.000 m3", ConstructExport.OneStep)]
    [InlineData("held at most 2 s then abort \"Held too long\"", ConstructExport.OneStep)]
    [InlineData("held at most 2 s then alarm \"Held too long\"", ConstructExport.OneStep)]
    [InlineData("calibrate LT1 at most 2 s role Maintenance \"Set by hand\"\ninterlock I1 \"High\" M1 blocked while LT1 > 5.00 m3", ConstructExport.OneStep)]
    [InlineData("real TANK \"True\" 0 .. 11.00 m3 read by LT1 within 0.10 m3, rises at most 6 m3/min while M1\nrequire H1 \"Overflow\" never TANK > 10.50 m3", ConstructExport.OneStep)]
    [InlineData("", TwoSteps)]
    [InlineData("", Branches)]
    [InlineData("advance by hand role Commissioning", TwoSteps)]
    [InlineData("advance by hand role Commissioning", Branches)]
    public void The_text_is_proved_equal(string declarations, string procedure) =>
        ConstructExport.IsProvedEqual(ConstructExport.Of(declarations, procedure));

    [Theory]
    [InlineData("C <= 5", "C <= 3")]
    [InlineData("C := 6", "C := 5")]
    [InlineData("ELSIF C_Comes", "ELSIF NOT C_Comes")]
    public void A_count_that_counts_otherwise_is_found(string words, string others) => ConstructExport.IsFoundDifferent(
        ConstructExport.Of("count C \"Count\" 0 .. 6 mm each S2 adds 1 mm, set to 6 mm when S3\ninterlock I1 \"Enough\" M2 blocked while C < 1 mm"), words, others);

    [Fact]
    public void A_restart_that_goes_elsewhere_is_found() => ConstructExport.IsFoundDifferent(
        ConstructExport.Of("", TwoSteps), "ELSIF Restarted THEN", "ELSIF Restarted AND FALSE THEN");
}
