using Sequencer.Sites.Descriptions;
using Sequencer.Text;

namespace Sequencer.Sites.Folders;

/// <summary>
/// A site's folder on disk. Reads only inside it: a name with <c>..</c>, an absolute path, or a link
/// that leads outside is refused.
/// </summary>
public sealed class SiteFolder
{
    /// <summary>The largest file that is read: 16 MiB, what a program may have.</summary>
    public const int LargestFileBytes = 16 * 1024 * 1024;

    /// <summary>Links followed from one name, before it counts as leading nowhere.</summary>
    private const int MostLinks = 16;

    private readonly string _root;

    public SiteFolder(string path)
    {
        Shown = path.Replace('\\', '/').TrimEnd('/');
        _root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
    }

    /// <summary>The folder as the user wrote it.</summary>
    public string Shown { get; }

    public bool Exists => Directory.Exists(_root);

    /// <summary>Whether something of this name lies in the folder.</summary>
    public bool Has(string name) => Path.Exists(Path.Combine(_root, name));

    /// <summary>The names of the files with an ending in a folder below, sorted; empty where the folder is missing.</summary>
    public IReadOnlyList<string> Files(string folder, string ending)
    {
        string path = Path.Combine(_root, folder);
        return Directory.Exists(path)
            ? [.. Directory.EnumerateFiles(path, "*" + ending).Select(file => $"{folder}/{Path.GetFileName(file)}").Order(StringComparer.Ordinal)]
            : [];
    }

    /// <summary>Reads a text; null, with a diagnostic at <paramref name="named"/>, where that cannot be done.</summary>
    public SourceText? Read(string name, SourceSpan named, DiagnosticBag diagnostics)
    {
        if (!IsInside(name))
        {
            diagnostics.Add(SiteDiagnostics.OutsideTheFolder(named, name));
            return null;
        }

        string path = Path.Combine(_root, name);
        if (Directory.Exists(path))
        {
            diagnostics.Add(SiteDiagnostics.NotAFile(named, name));
            return null;
        }

        if (!File.Exists(path))
        {
            diagnostics.Add(SiteDiagnostics.NoSuchFile(named, name));
            return null;
        }

        return Decode(name, path, named, diagnostics);
    }

    /// <summary>The bytes of a file that was read.</summary>
    /// <exception cref="IOException">It cannot be read any more.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read any more.</exception>
    public byte[] Content(string name) => Bounded(Path.Combine(_root, name));

    /// <summary>Whether a file that was read holds exactly these bytes.</summary>
    public bool Holds(string name, byte[] content) => content.AsSpan().SequenceEqual(Content(name));

    /// <summary>Puts new content in the place of a file that was read; where it is a link, of what the link leads to.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public void Replace(string name, byte[] content)
    {
        string path = Path.Combine(_root, name);
        WholeFile.Write(WithoutLinks(path) ?? path, content);
    }

    private SourceText? Decode(string name, string path, SourceSpan named, DiagnosticBag diagnostics)
    {
        try
        {
            DecodedText decoded = SourceDecoder.Decode($"{Shown}/{name}", Bounded(path), LargestFileBytes);
            diagnostics.AddRange(decoded.Diagnostics);
            return decoded.Text;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            diagnostics.Add(SiteDiagnostics.Unreadable(named, name, failure.Message));
            return null;
        }
    }

    /// <summary>
    /// No more than a little beyond the limit, so that a file that grows or never ends is refused, not swallowed.
    /// What has no length is not opened: reading a named pipe would wait for ever.
    /// </summary>
    private static byte[] Bounded(string path)
    {
        if (new FileInfo(path).Length == 0 && new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true) is not FileInfo { Length: > 0 })
        {
            return [];
        }

        using FileStream stream = File.OpenRead(path);
        using MemoryStream content = new();
        byte[] buffer = new byte[64 * 1024];
        int read;
        while (content.Length <= LargestFileBytes && (read = stream.Read(buffer)) > 0)
        {
            content.Write(buffer, 0, read);
        }

        return content.ToArray();
    }

    private bool IsInside(string name)
    {
        if (name.Length == 0 || Path.IsPathRooted(name) || name.Contains('\0', StringComparison.Ordinal) || name.Split('/', '\\').Contains(".."))
        {
            return false;
        }

        string root = WithoutLinks(_root) ?? _root;
        return IsBelow(Path.GetFullPath(Path.Combine(_root, name)), _root)
            && (WithoutLinks(Path.Combine(root, name)) is not { } target || IsBelow(target, root));
    }

    private static bool IsBelow(string path, string root) => path.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>The path with every link in it followed, of folders too; null where links go round in a circle.</summary>
    private static string? WithoutLinks(string path)
    {
        Stack<string> parts = new(Path.GetFullPath(path).Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse());
        string real = Path.GetPathRoot(Path.GetFullPath(path)) ?? "/";
        int links = 0;
        while (parts.TryPop(out string? part))
        {
            string next = Path.GetFullPath(Path.Combine(real, part));
            if (new FileInfo(next).LinkTarget is not { } target)
            {
                real = next;
                continue;
            }

            if (++links > MostLinks)
            {
                return null;
            }

            real = Path.IsPathRooted(target) ? Path.GetPathRoot(target) ?? "/" : real;
            foreach (string piece in target.Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse())
            {
                parts.Push(piece);
            }
        }

        return real;
    }
}
