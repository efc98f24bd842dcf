using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>A demo site's folder, copied with another program in it; removed at the end.</summary>
internal sealed class BrokenSite : IDisposable
{
    private readonly string _path = Directory.CreateTempSubdirectory("variant").FullName;

    public BrokenSite(string folder, string programFile, string program)
    {
        string original = RepositoryPath.At("sequences", folder);
        foreach (string file in Directory.EnumerateFiles(original, "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(_path, Path.GetRelativePath(original, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        File.WriteAllText(Path.Combine(_path, programFile), program);
    }

    public Folders.SiteFolder Folder => new(_path);

    public void Dispose() => Directory.Delete(_path, recursive: true);
}
