using System.Text;

namespace Sequencer.Sites.Folders;

/// <summary>
/// A folder that results go to. Each file is written whole or not at all (to a neighbour first, then
/// renamed). A file that an earlier run of ours did not make is never overwritten: the ones that did are
/// listed in <see cref="ListName"/>.
/// </summary>
public sealed class OutputFolder
{
    public const string ListName = ".made-by-sequencer";

    private readonly SortedSet<string> _made;
    private readonly List<string> _written = [];

    private OutputFolder(string path, IEnumerable<string> made)
    {
        Path = path;
        _made = new SortedSet<string>(made, StringComparer.Ordinal);
    }

    public string Path { get; }

    /// <summary>The files written in this run, in order, relative to the folder.</summary>
    public IReadOnlyList<string> Written => _written;

    /// <exception cref="OutputRefusedException">The path is a file, or the folder cannot be made.</exception>
    public static OutputFolder Open(string path)
    {
        if (File.Exists(path))
        {
            throw new OutputRefusedException($"`{path}` is a file; results need a folder");
        }

        try
        {
            Directory.CreateDirectory(path);
            string list = System.IO.Path.Combine(path, ListName);
            return new OutputFolder(path, File.Exists(list) ? File.ReadAllLines(list) : []);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new OutputRefusedException($"`{path}` cannot be used for results: {failure.Message}");
        }
    }

    public void Write(string name, string content) => Write(name, new UTF8Encoding(false).GetBytes(content));

    /// <exception cref="OutputRefusedException">The file exists and is not ours, or cannot be written.</exception>
    public void Write(string name, byte[] content)
    {
        string target = System.IO.Path.Combine(Path, name);
        if (Directory.Exists(target) || (File.Exists(target) && !_made.Contains(name)))
        {
            throw new OutputRefusedException($"`{target}` was not made by an earlier run and is left as it is; choose another folder");
        }

        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(target) ?? Path);
            Replace(target, content);
            if (_made.Add(name))
            {
                Replace(System.IO.Path.Combine(Path, ListName), Encoding.UTF8.GetBytes(string.Join('\n', _made) + "\n"));
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new OutputRefusedException($"`{target}` cannot be written: {failure.Message}");
        }

        _written.Add(name);
    }

    private static void Replace(string target, byte[] content)
    {
        string neighbour = target + ".part";
        File.WriteAllBytes(neighbour, content);
        File.Move(neighbour, target, overwrite: true);
    }
}
