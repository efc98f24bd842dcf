using System.Collections.Frozen;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Types;

/// <summary>
/// The elementary types that are read, IEC 61131-3 (second edition) Table 10. TIME has no size there; a signed
/// 32-bit number of milliseconds is the narrowest in common use (common practice, no source).
/// </summary>
internal static class ElementaryTypes
{
    public static DataType Boolean { get; } = new("BOOL", TypeFamily.Boolean, IntegerRange.Boolean);

    public static DataType Time { get; } = new("TIME", TypeFamily.Duration, new IntegerRange(int.MinValue, int.MaxValue));

    /// <summary>A literal without a type: it fits every type that holds its value.</summary>
    public static DataType Literal { get; } = new("an integer literal", TypeFamily.Integer, new IntegerRange(long.MinValue, long.MaxValue));

    public static FrozenDictionary<string, DataType> ByName { get; } = new DataType[]
    {
        Boolean,
        Time,
        new("SINT", TypeFamily.Integer, new IntegerRange(sbyte.MinValue, sbyte.MaxValue)),
        new("INT", TypeFamily.Integer, new IntegerRange(short.MinValue, short.MaxValue)),
        new("DINT", TypeFamily.Integer, new IntegerRange(int.MinValue, int.MaxValue)),
        new("USINT", TypeFamily.Integer, new IntegerRange(0, byte.MaxValue)),
        new("UINT", TypeFamily.Integer, new IntegerRange(0, ushort.MaxValue)),
        new("UDINT", TypeFamily.Integer, new IntegerRange(0, uint.MaxValue)),
        new("BYTE", TypeFamily.Bits, new IntegerRange(0, byte.MaxValue)),
        new("WORD", TypeFamily.Bits, new IntegerRange(0, ushort.MaxValue)),
        new("DWORD", TypeFamily.Bits, new IntegerRange(0, uint.MaxValue)),
    }.ToFrozenDictionary(type => type.Name, StringComparer.OrdinalIgnoreCase);
}
