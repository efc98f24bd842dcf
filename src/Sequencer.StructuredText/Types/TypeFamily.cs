namespace Sequencer.StructuredText.Types;

internal enum TypeFamily
{
    Boolean,
    Integer,

    /// <summary>BYTE, WORD, DWORD: compared and converted, never calculated with.</summary>
    Bits,

    /// <summary>TIME, in whole milliseconds.</summary>
    Duration,
    Enumeration,
}
