using System.Collections.Frozen;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Types;

/// <summary>
/// The elementary types that are read, IEC 61131-3 (second edition) Table 10. TIME has no size there; a signed
/// 32-bit number of milliseconds is the narrowest in common use (common practice, no source). LTIME is nanoseconds in a signed
/// 64-bit number (third edition, from memory), of which whole milliseconds are followed.
/// </summary>
internal static class ElementaryTypes
{
    private const long NanosecondsInMillisecond = 1_000_000;

    public static DataType Boolean { get; } = new("BOOL", TypeFamily.Boolean, IntegerRange.Boolean);

    public static DataType Time { get; } = new("TIME", TypeFamily.Duration, new IntegerRange(int.MinValue, int.MaxValue));

    public static DataType LongTime { get; } =
        new("LTIME", TypeFamily.Duration, new IntegerRange(long.MinValue / NanosecondsInMillisecond, long.MaxValue / NanosecondsInMillisecond));

    /// <summary>A literal without a type: it fits every type that holds its value.</summary>
    public static DataType Literal { get; } = new("an integer literal", TypeFamily.Integer, new IntegerRange(long.MinValue, long.MaxValue));

    /// <summary>A number with a decimal point and no type: it fits REAL and LREAL.</summary>
    public static DataType RealLiteral { get; } = new("a number with a decimal point", TypeFamily.Opaque, new IntegerRange(0, 0));

    /// <summary>
    /// The most that a variable of a 64-bit type may hold, either sign: sums of two of them, and products with small constants, still fit 64 bits.
    /// </summary>
    public const long WidestBound = 1L << 53;

    public static FrozenDictionary<string, DataType> ByName { get; } = new DataType[]
    {
        Boolean,
        Time,
        new("SINT", TypeFamily.Integer, new IntegerRange(sbyte.MinValue, sbyte.MaxValue)),
        new("INT", TypeFamily.Integer, new IntegerRange(short.MinValue, short.MaxValue)),
        new("DINT", TypeFamily.Integer, new IntegerRange(int.MinValue, int.MaxValue)),
        new("LINT", TypeFamily.Integer, new IntegerRange(long.MinValue, long.MaxValue)),
        new("USINT", TypeFamily.Integer, new IntegerRange(0, byte.MaxValue)),
        new("UINT", TypeFamily.Integer, new IntegerRange(0, ushort.MaxValue)),
        new("UDINT", TypeFamily.Integer, new IntegerRange(0, uint.MaxValue)),
        new("ULINT", TypeFamily.Integer, new IntegerRange(0, long.MaxValue)),
        new("BYTE", TypeFamily.Bits, new IntegerRange(0, byte.MaxValue)),
        new("WORD", TypeFamily.Bits, new IntegerRange(0, ushort.MaxValue)),
        new("DWORD", TypeFamily.Bits, new IntegerRange(0, uint.MaxValue)),
        LongTime,
        Opaque("REAL"),
        Opaque("LREAL"),
        Opaque("STRING"),
        Opaque("WSTRING"),
        Opaque("CHAR"),
        Opaque("WCHAR"),
        Opaque("DATE"),
        Opaque("LDATE"),
        Opaque("TOD"),
        Opaque("LTOD"),
        Opaque("DT"),
        Opaque("LDT"),
    }.ToFrozenDictionary(type => type.Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>A type by its name or the longer name that the standard gives it too; null where there is none.</summary>
    public static DataType? Find(string name) => ByName.GetValueOrDefault(name.ToUpperInvariant() switch
    {
        "TIME_OF_DAY" => "TOD",
        "DATE_AND_TIME" => "DT",
        "LTIME_OF_DAY" => "LTOD",
        "LDATE_AND_TIME" => "LDT",
        _ => name,
    });

    private static DataType Opaque(string name) => new(name, TypeFamily.Opaque, new IntegerRange(0, 0));
}
