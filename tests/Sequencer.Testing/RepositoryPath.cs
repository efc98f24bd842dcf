using System.Runtime.CompilerServices;

namespace Sequencer.Testing;

/// <summary>Finds the repository's folders from the place of the source that asks.</summary>
public static class RepositoryPath
{
    public static string Root { get; } = FindRoot();

    /// <summary>A path below the repository's root, as <c>At("sequences", "site")</c>.</summary>
    public static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>
    /// A path below a site's folder: a demo site of <c>sequences</c>, or one of the small sites that only tests use, which
    /// may not change when a demo site grows.
    /// </summary>
    public static string Site(string site, params string[] parts)
    {
        string demo = At("sequences", site);
        return Path.Combine([Directory.Exists(demo) ? demo : At("tests", "Sequencer.Testing", "Sites", site), .. parts]);
    }

    internal static string Of(string sourceFile) => Path.GetDirectoryName(sourceFile)
        ?? throw new InvalidOperationException($"no folder in {sourceFile}");

    internal static string Relative(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');

    private static string FindRoot([CallerFilePath] string here = "")
    {
        DirectoryInfo? folder = new FileInfo(here).Directory;
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Sequencer.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException($"no Sequencer.sln above {here}");
    }
}
