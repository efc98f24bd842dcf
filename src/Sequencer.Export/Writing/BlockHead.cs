using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Sequencer.Text;

namespace Sequencer.Export.Writing;

/// <summary>
/// The head of one block: what it is, from which lines of which files, of which revision, and the hash of exactly the lines
/// that follow. Nothing in it looks at any other block, so that an edit elsewhere leaves it as it is.
/// </summary>
internal static class BlockHead
{
    private const int Width = 78;
    private const int LongestLine = 110;

    /// <param name="text">Where head and block are written.</param>
    /// <param name="title">The block's name and what it is for.</param>
    /// <param name="origin">Where it comes from, a line each.</param>
    /// <param name="revision">The site's.</param>
    /// <param name="block">The lines that the hash is of: from here to the end of the block.</param>
    public static void Write(TextLines text, string title, IEnumerable<string> origin, string revision, TextLines block)
    {
        string content = block.ToString();
        text.Comment(new string('=', Width));
        text.Comment(title);
        foreach (string line in origin)
        {
            Wrapped(text, line);
        }

        text.Comment($"revision  {revision}");
        text.Comment(string.Create(CultureInfo.InvariantCulture, $"content   the {content.Count(letter => letter == '\n')} lines below this head"));
        text.Comment($"          sha-256 {Hash(content)}");
        text.Comment(new string('=', Width));
        text.Append(block);
        text.Blank();
    }

    /// <summary>A file as the head names it; the hash is that of its bytes where its lines end in LF and it has no byte order mark.</summary>
    public static IEnumerable<string> File(SourceText source) =>
    [
        string.Create(CultureInfo.InvariantCulture, $"source    {Path.GetFileName(source.Path)}, lines 1 to {Lines(source.Content)}"),
        $"          sha-256 {Hash(source.Content)}",
    ];

    private static int Lines(string content) => content.Count(letter => letter == '\n') + (content.EndsWith('\n') ? 0 : 1);

    private static string Hash(string content) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content)));

    /// <summary>A long list goes on in lines of its own, broken behind a comma.</summary>
    private static void Wrapped(TextLines text, string line)
    {
        string rest = line;
        while (rest.Length > LongestLine && rest.LastIndexOf(", ", LongestLine, StringComparison.Ordinal) is > 0 and int comma)
        {
            text.Comment(rest[..(comma + 1)]);
            rest = "            " + rest[(comma + 2)..];
        }

        text.Comment(rest);
    }
}
