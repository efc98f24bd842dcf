namespace Sequencer.Lowering.Tests.Units;

/// <summary>
/// Small units for sites of several: <c>A</c> with switches SA1 and SA2, level LTA, motor MA and valve XA, and the same for
/// other letters.
/// </summary>
internal static class UnitPrograms
{
    public static string Unit(string letter, string declarations, string procedure)
    {
        int place = letter[0] - 'A';
        return $"""
            language 1
            unit {letter} "Bench unit"
            input  LT{letter}  0 .. 10.00 m3  at %IW{place}  "Level"  bad after 0.3 s
            input  S{letter}1  switch  at %IX{place}.0  "First"
            input  S{letter}2  switch normally closed  at %IX{place}.1  "Second"
            output M{letter}  motor  at %QX{place}.0  "Motor"  safe stopped
            output X{letter}  valve  at %QX{place}.1  "Valve"  safe closed
            {declarations}
            procedure
            {procedure}

            """;
    }

    /// <summary>Steps 10 and 20, left by the two switches.</summary>
    public static string TwoSteps(string letter) => $"""
          step 10 "One"
            run M{letter}
            limit 1 h then hold "Too long"
            go 20 when S{letter}1
          step 20 "Two"
            open X{letter}
            limit 1 h then hold "Too long"
            go finish when S{letter}2
        """;
}
