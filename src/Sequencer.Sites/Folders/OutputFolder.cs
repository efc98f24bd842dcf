using System.Text;

namespace Sequencer.Sites.Folders;

/// <summary>
/// A folder that the results of one run go to, all of them or none: they are kept until
/// <see cref="Commit"/>, which first looks whether each can be written. A file that an earlier run of ours
/// did not make is never overwritten; the ones that did are listed in <see cref="ListName"/>. What an earlier
/// run made and this one did not is removed: a certificate of yesterday's program beside today's summary
/// would be taken for evidence.
/// </summary>
public sealed class OutputFolder
{
    public const string ListName = ".made-by-sequencer";

    private readonly SortedSet<string> _made;
    private readonly List<(string Name, byte[] Content)> _kept = [];

    private OutputFolder(string path, IEnumerable<string> made)
    {
        Path = System.IO.Path.TrimEndingDirectorySeparator(path);
        _made = new SortedSet<string>(made, StringComparer.Ordinal);
    }

    public string Path { get; }

    /// <summary>The files of this run, in order, relative to the folder.</summary>
    public IEnumerable<string> Names => _kept.Select(file => file.Name);

    /// <exception cref="OutputRefusedException">The path is a file, or the folder cannot be made.</exception>
    public static OutputFolder Open(string path)
    {
        if (string.IsNullOrWhiteSpace(path))
        {
            throw new OutputRefusedException("the folder for results has no name");
        }

        if (File.Exists(path))
        {
            throw new OutputRefusedException($"`{path}` is a file; results need a folder");
        }

        try
        {
            Directory.CreateDirectory(path);
            string list = System.IO.Path.Combine(path, ListName);
            return new OutputFolder(path, File.Exists(list) ? File.ReadAllLines(list).Where(IsBelow) : []);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new OutputRefusedException($"`{path}` cannot be used for results: {failure.Message}");
        }
    }

    public void Keep(string name, string content) => Keep(name, new UTF8Encoding(false).GetBytes(content));

    public void Keep(string name, byte[] content) => _kept.Add((name, content));

    /// <summary>Writes what was kept.</summary>
    /// <exception cref="OutputRefusedException">A file exists and is not ours, or cannot be written.</exception>
    public void Commit()
    {
        foreach (string name in Names)
        {
            string target = Target(name);
            if (Directory.Exists(target) || (File.Exists(target) && !_made.Contains(name)))
            {
                throw NotOurs(target);
            }

            for (string folder = Parent(target); folder.Length > Path.Length; folder = Parent(folder))
            {
                if (File.Exists(folder))
                {
                    throw NotOurs(folder);
                }
            }
        }

        try
        {
            WholeFile.Write(Target(ListName), Listed(_made.Concat(Names)));
            foreach ((string name, byte[] content) in _kept)
            {
                Directory.CreateDirectory(Parent(Target(name)));
                WholeFile.Write(Target(name), content);
            }

            RemoveStale();
            WholeFile.Write(Target(ListName), Listed(Names));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new OutputRefusedException($"the results cannot be written: {failure.Message}");
        }
    }

    private void RemoveStale()
    {
        foreach (string target in _made.Except(Names).Select(Target))
        {
            File.Delete(target);
            for (string folder = Parent(target);
                folder.Length > Path.Length && Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any();
                folder = Parent(folder))
            {
                Directory.Delete(folder);
            }
        }
    }

    /// <summary>The list is a file that anyone can edit: a name in it that leads out of the folder is not ours.</summary>
    private static bool IsBelow(string name) =>
        name.Length > 0 && !System.IO.Path.IsPathRooted(name) && !name.Split('/', '\\').Contains("..");

    private static OutputRefusedException NotOurs(string path) =>
        new($"`{path}` was not made by an earlier run and is left as it is; nothing was written, choose another folder");

    private static string Parent(string path) => System.IO.Path.GetDirectoryName(path) ?? "";

    private string Target(string name) => System.IO.Path.Combine(Path, name);

    private static byte[] Listed(IEnumerable<string> names) =>
        Encoding.UTF8.GetBytes(string.Join('\n', names.Distinct().Order(StringComparer.Ordinal)) + "\n");
}
