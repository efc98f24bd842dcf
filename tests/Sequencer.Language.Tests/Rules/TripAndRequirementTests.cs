namespace Sequencer.Language.Tests.Rules;

public sealed class TripAndRequirementTests
{
    [Fact]
    public void A_trip_on_a_reading_that_does_not_say_if_bad_is_reported_once() => RuleProgram.Reports(
        "SEQ0529",
        "trip T9 \"Tank too full\" when LT1 > 0.950 m3 then hold",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        trip T9 "Tank too full" when LT1 > 0.950 m3 then hold

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_trip_that_trips_nothing_is_reported_once() => RuleProgram.Reports(
        "SEQ0530",
        "trip T9 \"Tank at high-high\" when LSHH1 then alarm",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  LSHH1  switch normally closed  at %IX0.3  "Tank at high-high"
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        trip T9 "Tank at high-high" when LSHH1 then alarm

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_requirement_that_no_protection_keeps_is_reported_once() => RuleProgram.Reports(
        "SEQ0531",
        "require H1 \"Inlet and outlet\" never XV1 and XV2",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Outlet"  safe closed
        require H1 "Inlet and outlet" never XV1 and XV2

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go 20 when LT1 >= 0.800 m3

          step 20 "Empty"
            open XV2
            limit 30 min then hold "Emptying slow"
            go finish when LT1 < 0.100 m3
        """);

    [Fact]
    public void An_emergency_stop_that_no_trip_reads_is_reported_once() => RuleProgram.Reports(
        "SEQ0532",
        "ES1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  ES1  switch normally closed  at %IX0.3  "Emergency stop pressed"
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        interlock I1 "Emergency" XV1 blocked while ES1

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);
}
