namespace Sequencer.Language.Tests.Rules;

public sealed class UnusedDeclarationTests
{
    [Fact]
    public void An_output_that_nothing_switches_on_is_reported_once() => RuleProgram.Reports(
        "SEQ0501",
        "XV2",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Outlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void An_input_that_nothing_reads_is_reported_once() => RuleProgram.Reports(
        "SEQ0502",
        "LSHH1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  LSHH1  switch normally closed  at %IX0.3  "Tank at high-high"
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_parameter_that_nothing_reads_is_reported_once() => RuleProgram.Reports(
        "SEQ0503",
        "full",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        parameter full = 0.800 m3 from 0.500 m3 to 0.900 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_latch_that_nothing_reads_is_reported_once() => RuleProgram.Reports(
        "SEQ0504",
        "FILLED",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        latch FILLED "The tank was filled" set when LT1 > 0.700 m3 clear when LT1 < 0.100 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_reagent_that_no_output_delivers_is_reported_once() => RuleProgram.Reports(
        "SEQ0512",
        "CAUSTIC",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3 and AT1 < 9.00 pH
        """);
}
