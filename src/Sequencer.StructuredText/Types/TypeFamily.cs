namespace Sequencer.StructuredText.Types;

internal enum TypeFamily
{
    Boolean,
    Integer,

    /// <summary>BYTE, WORD, DWORD: compared and converted, never calculated with.</summary>
    Bits,

    /// <summary>TIME and LTIME, in whole milliseconds.</summary>
    Duration,
    Enumeration,
    Array,
    Structure,

    /// <summary>
    /// REAL, strings, dates: read and carried, their values not followed. Nothing may depend on one: where something would, that is reported.
    /// </summary>
    Opaque,
}
