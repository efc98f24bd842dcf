namespace Sequencer.Cli.Tests;

/// <summary>Every file of a folder and its bytes.</summary>
internal static class FolderContents
{
    public static IReadOnlyList<string> Names(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    public static void SameBytes(string first, string second)
    {
        IReadOnlyList<string> names = Names(first);
        Assert.Equal(names, Names(second));
        Assert.All(names, name => Assert.True(
            File.ReadAllBytes(Path.Combine(first, name)).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(second, name))), $"{name} differs"));
    }
}
