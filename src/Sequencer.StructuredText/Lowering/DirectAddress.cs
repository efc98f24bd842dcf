using System.Collections.Immutable;
using System.Globalization;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// A directly represented variable: area, size and place, IEC 61131-3 (second edition) Table 15. No size
/// letter is a single bit.
/// </summary>
internal readonly record struct DirectAddress(SlotRole Role, char Size, ImmutableArray<long> Place)
{
    private const int BitsInByte = 8;
    private const int MostDigits = 9;

    /// <summary>As it is written with its size letter and in capitals.</summary>
    public string Canonical => $"%{Area}{Size}{string.Join('.', Place)}";

    private char Area => Role switch { SlotRole.Input => 'I', SlotRole.Output => 'Q', _ => 'M' };

    public static DirectAddress? Parse(string text)
    {
        string address = text.ToUpperInvariant();
        if (address.Length < 3)
        {
            return null;
        }

        SlotRole? role = address[1] switch { 'I' => SlotRole.Input, 'Q' => SlotRole.Output, 'M' => SlotRole.Marker, _ => null };
        bool sized = address[2] is 'X' or 'B' or 'W' or 'D' or 'L';
        string[] place = address[(sized ? 3 : 2)..].Split('.');
        return role is not { } known || !place.All(IsNumber)
            ? null
            : new DirectAddress(known, sized ? address[2] : 'X', [.. place.Select(part => long.Parse(part, CultureInfo.InvariantCulture))]);
    }

    /// <summary>
    /// The numbers before the last byte, and the bits from there, for controllers that number words by their first byte (then words 0 and 1
    /// share a byte) or one by one: the standard leaves that open. Null for what has no place among bytes.
    /// </summary>
    public (string Before, long Start, long Length)? Bits(int elements, bool byBytes)
    {
        long size = Size switch { 'X' => 1, 'B' => 8, 'W' => 16, 'D' => 32, _ => 64 };
        int own = Size == 'X' ? 2 : 1;
        if (Place.Length < own || (Size == 'X' && Place[^1] >= BitsInByte))
        {
            return null;
        }

        long start = Size == 'X' ? (Place[^2] * BitsInByte) + Place[^1] : Place[^1] * (byBytes ? BitsInByte : size);
        return (string.Join('.', Place.SkipLast(own)), start, size * elements);
    }

    private static bool IsNumber(string part) => part.Length is > 0 and <= MostDigits && part.All(char.IsAsciiDigit);
}
