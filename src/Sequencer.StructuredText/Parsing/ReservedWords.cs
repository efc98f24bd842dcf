using System.Collections.Frozen;

namespace Sequencer.StructuredText.Parsing;

/// <summary>
/// The words that cannot be names: IEC 61131-3 (second edition) Annex C with the additions of the third
/// edition, from memory.
/// </summary>
public static class ReservedWords
{
    /// <summary>Words of the grammar.</summary>
    public static FrozenSet<string> Keywords { get; } = Set(
        """
        ACTION END_ACTION ARRAY OF AT BY CASE END_CASE CONFIGURATION END_CONFIGURATION CONSTANT CONTINUE DO ELSE
        ELSIF EN ENO EXIT FALSE F_EDGE FOR END_FOR FROM FUNCTION END_FUNCTION FUNCTION_BLOCK END_FUNCTION_BLOCK IF
        THEN END_IF INITIAL_STEP END_STEP MOD NON_RETAIN NOT AND OR XOR ON PROGRAM END_PROGRAM R_EDGE READ_ONLY
        READ_WRITE REPEAT UNTIL END_REPEAT RESOURCE END_RESOURCE RETAIN RETURN STEP STRUCT END_STRUCT TASK TO
        TRANSITION END_TRANSITION TRUE TYPE END_TYPE VAR END_VAR VAR_INPUT VAR_OUTPUT VAR_IN_OUT VAR_TEMP
        VAR_EXTERNAL VAR_ACCESS VAR_CONFIG VAR_GLOBAL WHILE END_WHILE WITH
        ABSTRACT CLASS END_CLASS EXTENDS FINAL IMPLEMENTS INTERFACE END_INTERFACE INTERNAL METHOD END_METHOD
        NAMESPACE END_NAMESPACE NULL OVERLAP OVERRIDE PRIVATE PROTECTED PUBLIC REF REF_TO SUPER THIS USING
        """);

    /// <summary>Names of elementary and generic types.</summary>
    public static FrozenSet<string> TypeNames { get; } = Set(
        """
        BOOL SINT INT DINT LINT USINT UINT UDINT ULINT REAL LREAL TIME DATE TIME_OF_DAY TOD DATE_AND_TIME DT STRING
        WSTRING BYTE WORD DWORD LWORD CHAR WCHAR LTIME LDATE LTOD LDT ANY ANY_INT ANY_NUM ANY_REAL ANY_BIT
        """);

    /// <summary>Names of standard functions and function blocks.</summary>
    public static FrozenSet<string> StandardNames { get; } = Set(
        """
        TON TOF TP R_TRIG F_TRIG SR RS CTU CTD CTUD ABS SQRT LN LOG EXP SIN COS TAN ASIN ACOS ATAN ADD MUL SUB DIV
        EXPT MOVE SHL SHR ROR ROL SEL MAX MIN LIMIT MUX GT GE EQ LE LT NE LEN LEFT RIGHT MID CONCAT INSERT DELETE
        REPLACE FIND
        """);

    private static FrozenSet<string> Set(string words) =>
        words.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries).ToFrozenSet(StringComparer.OrdinalIgnoreCase);
}
