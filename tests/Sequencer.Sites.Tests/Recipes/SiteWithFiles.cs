using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Recipes;

/// <summary>A copy of a demo site without its scenarios and its trials, and more files in it; goes away when disposed of.</summary>
internal sealed class SiteWithFiles : IDisposable
{
    private const string Head = "# ";

    public SiteWithFiles(string site)
    {
        Folder = Directory.CreateTempSubdirectory("site-").FullName;
        foreach (string file in Directory.EnumerateFiles(RepositoryPath.Site(site)).Where(file => Path.GetFileName(file) != "trials.yaml"))
        {
            File.Copy(file, At(Path.GetFileName(file)));
        }
    }

    public string Folder { get; }

    public string At(string name) => Path.Combine(Folder, name);

    /// <summary>Files one below the other, each under a line <c># NAME</c>.</summary>
    public SiteWithFiles With(string files)
    {
        string? name = null;
        foreach (string line in files.Split('\n'))
        {
            name = line.StartsWith(Head, StringComparison.Ordinal) ? line[Head.Length..] : name ?? throw new ArgumentException("the first line names no file");
            Directory.CreateDirectory(Path.GetDirectoryName(At(name)) ?? Folder);
            File.AppendAllText(At(name), line + "\n");
        }

        return this;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
