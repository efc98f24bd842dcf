using Sequencer.StructuredText.Parsing;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// The standard function blocks without a clock, as the text that the standard gives for them: IEC 61131-3
/// (second edition) Tables 34 to 36, from memory. R_EDGE inputs are written out as the edge detector they mean.
/// </summary>
internal static class StandardBlocks
{
    private const string Text =
        """
        FUNCTION_BLOCK SR
          VAR_INPUT S1 : BOOL; R : BOOL; END_VAR
          VAR_OUTPUT Q1 : BOOL; END_VAR
          Q1 := S1 OR (NOT R AND Q1);
        END_FUNCTION_BLOCK

        FUNCTION_BLOCK RS
          VAR_INPUT S : BOOL; R1 : BOOL; END_VAR
          VAR_OUTPUT Q1 : BOOL; END_VAR
          Q1 := NOT R1 AND (S OR Q1);
        END_FUNCTION_BLOCK

        FUNCTION_BLOCK R_TRIG
          VAR_INPUT CLK : BOOL; END_VAR
          VAR_OUTPUT Q : BOOL; END_VAR
          VAR M : BOOL; END_VAR
          Q := CLK AND NOT M;
          M := CLK;
        END_FUNCTION_BLOCK

        FUNCTION_BLOCK F_TRIG
          VAR_INPUT CLK : BOOL; END_VAR
          VAR_OUTPUT Q : BOOL; END_VAR
          VAR M : BOOL; END_VAR
          Q := NOT CLK AND NOT M;
          M := NOT CLK;
        END_FUNCTION_BLOCK

        FUNCTION_BLOCK CTU
          VAR_INPUT CU : BOOL; R : BOOL; PV : INT; END_VAR
          VAR_OUTPUT Q : BOOL; CV : INT; END_VAR
          VAR rising : R_TRIG; END_VAR
          rising(CLK := CU);
          IF R THEN CV := 0;
          ELSIF rising.Q AND CV < 32767 THEN CV := CV + 1;
          END_IF;
          Q := CV >= PV;
        END_FUNCTION_BLOCK

        FUNCTION_BLOCK CTD
          VAR_INPUT CD : BOOL; LD : BOOL; PV : INT; END_VAR
          VAR_OUTPUT Q : BOOL; CV : INT; END_VAR
          VAR rising : R_TRIG; END_VAR
          rising(CLK := CD);
          IF LD THEN CV := PV;
          ELSIF rising.Q AND CV > -32768 THEN CV := CV - 1;
          END_IF;
          Q := CV <= 0;
        END_FUNCTION_BLOCK

        FUNCTION_BLOCK CTUD
          VAR_INPUT CU : BOOL; CD : BOOL; R : BOOL; LD : BOOL; PV : INT; END_VAR
          VAR_OUTPUT QU : BOOL; QD : BOOL; CV : INT; END_VAR
          VAR up : R_TRIG; down : R_TRIG; END_VAR
          up(CLK := CU);
          down(CLK := CD);
          IF R THEN CV := 0;
          ELSIF LD THEN CV := PV;
          ELSIF NOT (up.Q AND down.Q) THEN
            IF up.Q AND CV < 32767 THEN CV := CV + 1;
            ELSIF down.Q AND CV > -32768 THEN CV := CV - 1;
            END_IF;
          END_IF;
          QU := CV >= PV;
          QD := CV <= 0;
        END_FUNCTION_BLOCK
        """;

    /// <summary>The blocks; their names are reserved, which the parser says of them too and nobody hears.</summary>
    public static IEnumerable<UnitSyntax> All =>
        StructuredTextParser.Parse(new SourceText("IEC 61131-3 standard function blocks", Text), new DiagnosticBag())
            .Declarations.OfType<UnitSyntax>();
}
