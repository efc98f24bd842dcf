using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary>A fresh site as `sequencer new` makes it, in a folder of its own that goes away, to be spoilt as a test likes.</summary>
internal sealed class ScratchSite : IDisposable
{
    private readonly string _parent = Directory.CreateTempSubdirectory("sequencer-test-").FullName;

    public ScratchSite()
    {
        Folder = Path.Combine(_parent, "pit");
        string template = RepositoryPath.At("src", "Sequencer.Sites", "Template");
        foreach (string file in Directory.EnumerateFiles(template, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(Folder, Path.GetRelativePath(template, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target) ?? Folder);
            File.WriteAllText(target, File.ReadAllText(file).Replace("name: NAME", "name: pit", StringComparison.Ordinal));
        }
    }

    public string Folder { get; }

    /// <summary>A path beside the site, which nothing is at yet.</summary>
    public string Beside(string name) => Path.Combine(_parent, name);

    public string At(string name) => Path.Combine(Folder, name);

    public ScratchSite Replace(string file, string old, string with)
    {
        string text = File.ReadAllText(At(file));
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(At(file), text.Replace(old, with, StringComparison.Ordinal));
        return this;
    }

    public ScratchSite Write(string file, string content)
    {
        File.WriteAllText(At(file), content);
        return this;
    }

    public ScratchSite Write(string file, byte[] content)
    {
        File.WriteAllBytes(At(file), content);
        return this;
    }

    public void Dispose() => Directory.Delete(_parent, recursive: true);
}
