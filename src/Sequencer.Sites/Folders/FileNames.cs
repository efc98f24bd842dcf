namespace Sequencer.Sites.Folders;

/// <summary>Names that people gave as names of files.</summary>
internal static class FileNames
{
    /// <summary>Lower-case ASCII letters, digits and single hyphens, so that a name needs no quotes in any shell.</summary>
    public static string Of(string name)
    {
        IEnumerable<char> safe = name.ToLowerInvariant().Select(static character => char.IsAsciiLetterOrDigit(character) ? character : '-');
        string slug = string.Join('-', string.Concat(safe).Split('-', StringSplitOptions.RemoveEmptyEntries));
        return slug.Length == 0 ? "unnamed" : slug;
    }
}
