using System.Runtime.CompilerServices;
using System.Text;
using DiffPlex.DiffBuilder;
using DiffPlex.DiffBuilder.Model;
using Xunit;

namespace Sequencer.Testing;

/// <summary>
/// Compares what a person reads with the golden file <c>NAME.verified.EXT</c> beside the test.
/// A missing or different file fails and prints the command that accepts it; ACCEPT_GOLDEN=1 in the
/// environment writes it, and is refused where CI is set.
/// </summary>
public static class GoldenFile
{
    public static void Matches(string actual, string name, [CallerFilePath] string testFile = "")
    {
        string folder = Path.Combine(RepositoryPath.Of(testFile), "Golden");
        string path = Path.Combine(folder, name);
        string normalised = actual.Replace("\r\n", "\n", StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1" && Environment.GetEnvironmentVariable("CI") is null)
        {
            Directory.CreateDirectory(folder);
            File.WriteAllText(path, normalised, new UTF8Encoding(false));
            return;
        }

        string command = $"ACCEPT_GOLDEN=1 dotnet test {RepositoryPath.Relative(RepositoryPath.Of(testFile))}";
        Assert.True(File.Exists(path), $"no golden file {RepositoryPath.Relative(path)}; look at the output below, then accept it with: {command}\n{normalised}");
        string expected = File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal);
        if (!string.Equals(expected, normalised, StringComparison.Ordinal))
        {
            Assert.Fail($"{RepositoryPath.Relative(path)} differs; if the change is meant, accept it with: {command}\n{Difference(expected, normalised)}");
        }
    }

    /// <summary>The accepted content of a golden file, for a test that looks at a part of it.</summary>
    public static string Accepted(string name, [CallerFilePath] string testFile = "")
    {
        string path = Path.Combine(RepositoryPath.Of(testFile), "Golden", name);
        return File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    private static string Difference(string expected, string actual)
    {
        StringBuilder text = new();
        foreach (DiffPiece line in InlineDiffBuilder.Diff(expected, actual).Lines)
        {
            if (line.Type is ChangeType.Inserted or ChangeType.Deleted)
            {
                text.Append(line.Type == ChangeType.Inserted ? '+' : '-').Append(' ').Append(line.Text).Append('\n');
            }
        }

        return text.ToString();
    }
}
