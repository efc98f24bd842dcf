using System.Globalization;

namespace Sequencer.Language.Parsing;

/// <summary>
/// Characters that print as nothing or change the order of what prints: a reviewer would read another
/// program than the controller gets.
/// </summary>
internal static class InvisibleCharacters
{
    public static bool IsVisible(char character) => CharUnicodeInfo.GetUnicodeCategory(character) is not
        (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned);
}
