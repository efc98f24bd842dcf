using System.Diagnostics;

namespace Sequencer.Cli.Tests;

/// <summary>Trial sets as processes of their own that can be killed, and their results side by side.</summary>
internal static class TrialSets
{
    /// <summary>The long tier plays and kills more of them.</summary>
    public static bool AreFull => Environment.GetEnvironmentVariable("SEQUENCER_ALL_TRIALS") == "1";

    /// <summary>A real kill (SIGKILL) of a real process, some time after the journal of its results has so many lines.</summary>
    public static void KillWhenSomeRunsAreDone(string results, string[] arguments, int done, int milliseconds)
    {
        using Process process = Start(arguments);
        string journal = Path.Combine(results, "journal", "runs.txt");
        while (!process.HasExited && Lines(journal) <= done)
        {
            Thread.Sleep(5);
        }

        Thread.Sleep(milliseconds);
        Kill(process);
    }

    /// <summary>
    /// A real kill in the middle of the results: a file is first written to a neighbour, which here is a pipe that nobody reads, so that the process comes to a stand there. What is left
    /// in the pipe's place is a file that was half written.
    /// </summary>
    public static void KillWhileWriting(string file, string[] arguments)
    {
        string neighbour = file + ".sequencer-part";
        using (Process pipe = Process.Start("mkfifo", neighbour))
        {
            pipe.WaitForExit();
            Assert.Equal(0, pipe.ExitCode);
        }

        File.Delete(file);
        using Process process = Start(arguments);
        string list = Path.Combine(Path.GetDirectoryName(file) ?? "", ".made-by-sequencer");
        DateTime before = File.Exists(list) ? File.GetLastWriteTimeUtc(list) : DateTime.MinValue;
        while (!process.HasExited && (!File.Exists(list) || File.GetLastWriteTimeUtc(list) == before))
        {
            Thread.Sleep(5);
        }

        Thread.Sleep(500);
        Assert.False(process.HasExited, $"the process ended before {file} was to be written");
        Kill(process);
        Assert.False(File.Exists(file), $"{file} was written before the kill");
        File.Delete(neighbour);
        File.WriteAllText(neighbour, "half");
    }

    public static void HaveTheSameResults(string first, string second)
    {
        HaveTheSameFiles(first, second);
        Assert.Equal(Journal(first), Journal(second));
    }

    /// <summary>All but the journal, whose lines stand in the order in which runs ended, and in files of their own of parts.</summary>
    public static void HaveTheSameFiles(string first, string second)
    {
        string[] names = [.. Results(first)];
        Assert.Contains("runs.parquet", names);
        Assert.Contains("distributions.png", names);
        Assert.Equal(names, Results(second));
        Assert.All(names, name => Assert.True(File.ReadAllBytes(Path.Combine(first, name)).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(second, name))), $"{name} differs"));
    }

    /// <summary>Each run once, whatever the order in which they ended.</summary>
    private static string[] Journal(string results) => [.. File.ReadAllLines(Path.Combine(results, "journal", "runs.txt")).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Results(string folder) => FolderContents.Names(folder).Where(name => !name.StartsWith("journal/", StringComparison.Ordinal));

    private static Process Start(string[] arguments) => Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "sequencer.dll"), .. arguments])
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    }) ?? throw new InvalidOperationException("dotnet did not start");

    private static void Kill(Process process)
    {
        process.Kill();
        process.WaitForExit();
        Assert.NotEqual(0, process.ExitCode);
    }

    private static int Lines(string journal)
    {
        if (!File.Exists(journal))
        {
            return 0;
        }

        using FileStream file = new(journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using StreamReader reader = new(file);
        return reader.ReadToEnd().Count(letter => letter == '\n');
    }
}
