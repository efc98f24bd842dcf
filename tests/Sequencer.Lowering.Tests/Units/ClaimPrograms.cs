namespace Sequencer.Lowering.Tests.Units;

/// <summary>
/// Units A, B, ... that share the motor PS of unit A under the name SKID: each claims it in step 10 and gives it up in step 20.
/// Unit B has switches SB1 and SB2 (normally closed) that lead on, and so have the others.
/// </summary>
internal static class ClaimPrograms
{
    public static ProgramBench Bench(int units, string claim = "limit 1 min then hold \"Skid is busy\"", string drive = "run PS")
    {
        ProgramBench bench = new([.. Enumerable.Range(0, units).Select(unit => Program((char)('A' + unit), claim, drive))]);
        for (int unit = 0; unit < units; unit++)
        {
            bench.Set($"S{(char)('A' + unit)}2.contact", 1);
        }

        bench.Scan(2);
        return bench;
    }

    private static string Program(char letter, string claim, string drive)
    {
        bool owner = letter == 'A';
        string declarations = owner
            ? "output PS motor at %QX9.0 \"Shared pump\" safe stopped\nshared SKID \"Acid skid\" PS\ninput ES switch at %IX9.0 \"Skid empty\"\ninterlock IS \"Skid empty\" PS blocked while ES"
            : "";
        string skid = owner ? "SKID" : "A.SKID";
        return UnitPrograms.Unit(letter.ToString(), declarations, $"""
              step 10 "Acid"
                claim {skid} {claim}
                {(owner ? drive : drive.Replace("PS", "A.PS", StringComparison.Ordinal))}
                run M{letter}
                limit 1 h then hold "Too long"
                go 20 when S{letter}1
              step 20 "Rest"
                open X{letter}
                limit 1 h then hold "Too long"
                go finish when S{letter}2
            """);
    }
}
