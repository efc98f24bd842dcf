namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// A directly represented variable: area, size and place, IEC 61131-3 (second edition) Table 15. No size
/// letter is a single bit.
/// </summary>
internal readonly record struct DirectAddress(SlotRole Role, string Canonical)
{
    public static DirectAddress? Parse(string text)
    {
        string address = text.ToUpperInvariant();
        if (address.Length < 3)
        {
            return null;
        }

        SlotRole? role = address[1] switch { 'I' => SlotRole.Input, 'Q' => SlotRole.Output, 'M' => SlotRole.Marker, _ => null };
        bool sized = address[2] is 'X' or 'B' or 'W' or 'D' or 'L';
        string place = address[(sized ? 3 : 2)..];
        return role is not { } known || !place.Split('.').All(IsNumber)
            ? null
            : new DirectAddress(known, $"{address[1]}{(sized ? address[2] : 'X')}{string.Join('.', place.Split('.').Select(WithoutZeros))}");
    }

    private static bool IsNumber(string part) => part.Length > 0 && part.All(char.IsAsciiDigit);

    private static string WithoutZeros(string part) => part.TrimStart('0') is { Length: > 0 } rest ? rest : "0";
}
