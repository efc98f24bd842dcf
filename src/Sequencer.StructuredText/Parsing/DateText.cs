using System.Globalization;

namespace Sequencer.StructuredText.Parsing;

/// <summary>Dates and times of day, IEC 61131-3 (second edition) Tables 8 and 9, from memory: <c>D#2024-02-29</c>, <c>TOD#23:59:59.5</c>, <c>DT#2024-02-29-12:00:00</c>.</summary>
internal static class DateText
{
    private const string Date = "yyyy-M-d";
    private const string Time = "H:m:s.FFFFFFF";

    public static string TypeOf(string prefix) => prefix.ToUpperInvariant() switch
    {
        "D" or "DATE" => "DATE",
        "LD" or "LDATE" => "LDATE",
        "TOD" or "TIME_OF_DAY" => "TOD",
        "LTOD" => "LTOD",
        "LDT" => "LDT",
        _ => "DT",
    };

    /// <summary>What is wrong with what stands behind the <c>#</c>, else null.</summary>
    public static string? FaultOf(string prefix, ReadOnlySpan<char> text)
    {
        string type = TypeOf(prefix);
        string[] formats = type switch
        {
            "DATE" or "LDATE" => [Date],
            "TOD" or "LTOD" => [Time, "H:m:s"],
            _ => [$"{Date}-{Time}", $"{Date}-H:m:s"],
        };
        string plain = text.ToString().Replace("_", "", StringComparison.Ordinal);
        return DateTime.TryParseExact(plain, formats, CultureInfo.InvariantCulture, DateTimeStyles.None, out _) ? null : type switch
        {
            "DATE" or "LDATE" => "a date is year-month-day",
            "TOD" or "LTOD" => "a time of day is hours:minutes:seconds",
            _ => "it is year-month-day-hours:minutes:seconds",
        };
    }
}
