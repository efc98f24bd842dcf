using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Checking;

/// <summary>Programs that several tests start from.</summary>
internal static class SamplePrograms
{
    /// <summary>The whole program of spec/language.md.</summary>
    public static string Rinse { get; } = ReadFromSpec();

    /// <summary>A program with every statement in every form.</summary>
    public const string Full = """
        language 1
        unit R1 "Test tank"
        input LT1 0 .. 6.000 m3 at %IW0 "Volume" bad after 2 s
        input AT1 0 .. 14.00 pH at %IW2 "Acidity" usable only while YS1, bad after 2 s
        input PT1 -60.0 .. 0.0 kPa at %IW4 "Vacuum"
        input LSHH1 switch normally closed at %IX0.0 "High-high" on after 0.5 s, off after 1 s
        input YS1 switch at %IX0.1 "Agitator running"
        input ZSO1 switch at %IX0.2 "Inlet open"
        input ZSC1 switch at %IX0.3 "Inlet closed"
        output XV1 valve at %QX0.0 "Inlet" safe closed, de-energised closed, confirm ZSO1, ZSC1 within 8 s else abort
        output AG1 motor at %QX0.1 "Agitator" safe running while LT1 > 0.500 m3 else stopped if bad running emergency stopped held last confirm YS1 within 5 s
        output P1 motor at %QX0.2 "Acid pump" safe stopped delivers ACID at 0.20 L/min
        output P2 motor at %QX0.3 "Caustic pump" safe stopped, delivers CAUSTIC at 12.0 L/h
        reagent ACID "Sulphuric acid" lowers AT1 opposes CAUSTIC
        reagent CAUSTIC raises AT1, opposes ACID
        parameter end_pH = 7.50 pH from 7.00 pH to 8.50 pH "Where the batch ends"
        parameter fill = 4.500 m3 from 3.000 m3 to 5.000 m3
        latch seen_high "Was high" set when LSHH1 clear when LT1 < 1.000 m3 retained
        interlock I1 "Overfill" XV1 blocked while LSHH1 or LT1 > 5.500 m3
        interlock I2 "Unmixed" P1, P2 blocked unless YS1 and AT1 usable
        interlock I3 "Overfill for good" XV1 blocked from LSHH1 until LT1 < 5.300 m3 and reset
        interlock I4 "Apart" P1, P2 exclusive, 60 s between
        permissive I5 "Vacuum first" XV1 starts only with (YS1 or PT1 < -20.0 kPa), else after 15 s hold
        trip E1 "High-high" when LSHH1 stays 2 s then emergency, if bad hold
        alarm A1 "Level high" when LT1 > 5.000 m3 and not LSHH1
        assume F1 "Filling rate" LT1 rises at most 0.40 m3/min, monitored, else hold
        assume F2 "Switch and level agree" never LSHH1 and LT1 < 1.000 m3
        require H1 "Overfill" never XV1 and LSHH1
        require H2 "Mixing" always AG1 proved while LT1 > 0.500 m3 and (P1 or P2)
        require H3 "Safe soon" after seen_high everything safe within 2 s
        require H4 "Emergency" after rising LSHH1 everything at its emergency value within 1 scan
        require H5 "Acid off" after E1 latched P1 stopped within 2 scans
        start only when LT1 < 0.200 m3 "Tank not empty"
        after power loss held, restart begins with 60 s wait
        procedure
          --| Fills to the parameter.
          step 10 "Fill"
            open XV1 after 5 s for 20 min while not LSHH1 until LT1 > 5.000 m3
            stop P1
            expect 12 min
            limit 30 min then hold "Filling slow"
            go 20 and 30 when LT1 >= fill - 0.100 m3
            go finish when falling ZSO1 or XV1 failed
          step 20 "Dose"
            dose P1 pulse 5 s, 2 s within 0.50 pH, then wait 45 s toward AT1 at end_pH + 0.10,
              at most 5 L a batch then stop, no 0.05 pH in 3 pulses then alarm
            limit 2 h then go 40 "No end point"
            go 25 when AT1 within end_pH - 0.30 .. end_pH + 0.20 stays 60 s after the last pulse
          step 25 "Done"
            limit 2 h then alarm "Waiting"
          step 30 "Stir"
            run AG1
            limit 3 h then abort "Still stirring"
          join 25, 30 to 40 when at step 25 and unit is Running and P1.total + P2.total < 20 L
          step 40 "Discharge"
            close XV1
            limit 30 min then stop "Discharge slow"
            go finish when LT1 < 0.050 m3
        """;

    public static SourceText Source(string content) => new("program.seq", content);

    private static string ReadFromSpec()
    {
        const string fence = "```seq clean\n";
        string text = File.ReadAllText(RepositoryPath.At("spec", "language.md")).Replace("\r\n", "\n", StringComparison.Ordinal);
        int section = text.IndexOf("## A whole program", StringComparison.Ordinal);
        int start = text.IndexOf(fence, section, StringComparison.Ordinal) + fence.Length;
        return text[start..text.IndexOf("```", start, StringComparison.Ordinal)];
    }
}
