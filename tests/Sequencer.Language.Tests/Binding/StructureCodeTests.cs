using Sequencer.Language.Tests.Checking;

namespace Sequencer.Language.Tests.Binding;

public sealed class StructureCodeTests
{
    [Theory]
    [InlineData("SEQ0122", "language 1", "language «2»")]
    [InlineData("SEQ0124", "start only", "start only when LT1 < 0.200 m3 \"Tank not empty\"\n«unit R2 \"Another\"»")]
    [InlineData("SEQ0124", "after power", "after power loss held\n«after power loss held»")]
    [InlineData("SEQ0124", "    expect", "    expect 12 min\n    «expect 13 min»")]
    [InlineData("SEQ0124", "    limit 30 min then hold", "    limit 30 min then hold \"slow\"\n    «limit 30 min then stop \"slow\"»")]
    [InlineData("SEQ0125", "procedure", "procedure\n  «open XV1»\n  close XV1")]
    [InlineData("SEQ0125", "  step 30", "  «alarm A2 \"Low\" when LT1 < 0.500 m3»\n  step 30 \"Stir\"")]
    [InlineData("SEQ0129", "alarm A1", "alarm A1 \"High\" when «YS1 and LSHH1 or ZSO1»")]
    [InlineData("SEQ0129", "alarm A1", "alarm A1 \"High\" when YS1 and («ZSO1 or LSHH1 and ZSC1»)")]
    [InlineData("SEQ0130", "alarm A1", "alarm A1 \"High\" when «YS1 or LSHH1 stays 2 s»")]
    public void A_statement_out_of_order_is_told_once_at_its_exact_place(string code, string replaced, string line) =>
        MarkedProgram.Replacing(replaced.TrimStart(), line).ReportsOnly(code);

    [Fact]
    public void A_program_that_does_not_begin_with_its_language_is_told_once() => MarkedProgram.Of(
        SamplePrograms.Full.Replace("language 1\nunit R1 \"Test tank\"", "«unit R1 \"Test tank\"»", StringComparison.Ordinal)).ReportsOnly("SEQ0121");

    [Fact]
    public void A_step_without_a_limit_is_told_once() => MarkedProgram.Of(SamplePrograms.Full
        .Replace("step 25 \"Done\"", "«step 25 \"Done\"»", StringComparison.Ordinal)
        .Replace("limit 2 h then alarm \"Waiting\"", string.Empty, StringComparison.Ordinal)).ReportsOnly("SEQ0128");

    [Theory]
    [InlineData("")]
    [InlineData("\n\n  -- nothing here\n")]
    public void A_file_without_statements_holds_no_program(string text) => MarkedProgram.Of("«»" + text).ReportsOnly("SEQ0120");

    [Fact]
    public void A_program_without_a_unit_is_told_once() => MarkedProgram.Of(
        "«language 1»\ninput LSHH1 switch at %IX0.0 \"High\"\nprocedure\nstep 10 \"Wait\"\nlimit 1 h then hold \"Slow\"\ngo finish when LSHH1").ReportsOnly("SEQ0123");

    [Fact]
    public void A_program_without_a_procedure_is_told_once() => MarkedProgram.Of("language 1\nunit R1 \"Tank\"\n«»").ReportsOnly("SEQ0126");

    [Fact]
    public void A_procedure_without_a_step_is_told_once() => MarkedProgram.Of("language 1\nunit R1 \"Tank\"\n«procedure»").ReportsOnly("SEQ0127");

    [Fact]
    public void Steps_without_the_procedure_line_are_told_at_the_first() => MarkedProgram.Of(
        "language 1\nunit R1 \"Tank\"\ninput LSHH1 switch at %IX0.0 \"High\"\n«step 10 \"Wait\"»\nlimit 1 h then hold \"Slow\"\ngo finish when LSHH1").ReportsOnly("SEQ0126");
}
