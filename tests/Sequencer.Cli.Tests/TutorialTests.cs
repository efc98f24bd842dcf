using System.Globalization;
using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary>
/// The tutorial, from top to bottom: files are written, lengthened and changed as its blocks say, and each command prints
/// the lines shown below it, in this order, and ends with the exit code shown (0 where none is).
/// </summary>
public sealed class TutorialTests
{
    [Fact]
    public void Every_block_of_the_tutorial_does_what_it_shows()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("sequencer-tutorial-");
        try
        {
            int commands = 0;
            foreach ((int line, string[] words, string text) in Blocks())
            {
                switch (words[0])
                {
                    case "write":
                        File.WriteAllText(Path.Combine(folder.FullName, words[1]), text);
                        break;
                    case "add":
                        File.AppendAllText(Path.Combine(folder.FullName, words[1]), text);
                        break;
                    case "change":
                        Change(Path.Combine(folder.FullName, words[1]), text, line);
                        break;
                    default:
                        Assert.Equal("run", words[0]);
                        Run(folder.FullName, text, line);
                        commands++;
                        break;
                }
            }

            Assert.True(commands >= 8, "the tutorial runs few commands");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Change(string path, string text, int line)
    {
        string[] parts = text.Split("=>\n");
        string content = File.ReadAllText(path);
        string old = parts[0].TrimEnd('\n');
        int place = content.IndexOf(old, StringComparison.Ordinal);
        Assert.True(parts.Length == 2 && place >= 0, $"spec/tutorial.md:{line}: nothing to change");
        File.WriteAllText(path, content[..place] + parts[1].TrimEnd('\n') + content[(place + old.Length)..]);
    }

    private static void Run(string folder, string text, int line)
    {
        string[] lines = text.TrimEnd('\n').Split('\n');
        Assert.StartsWith("$ sequencer ", lines[0], StringComparison.Ordinal);
        string[] arguments = lines[0].Split(' ')[2..];
        ToolRun run = ToolRun.In(folder, arguments);
        int expected = lines[^1].StartsWith("exit ", StringComparison.Ordinal) ? int.Parse(lines[^1][5..], CultureInfo.InvariantCulture) : 0;
        int from = 0;
        foreach (string shown in lines[1..].Where(shown => !shown.StartsWith("exit ", StringComparison.Ordinal)))
        {
            int place = run.Everything.IndexOf(shown, from, StringComparison.Ordinal);
            Assert.True(place >= 0, $"spec/tutorial.md:{line}: `{shown}` is not printed, or not in this order:\n{run.Everything}");
            from = place + shown.Length;
        }

        Assert.True(expected == run.ExitCode, $"spec/tutorial.md:{line}: exit code {run.ExitCode}\n{run.Everything}");
    }

    private static IEnumerable<(int Line, string[] Words, string Text)> Blocks()
    {
        string[] lines = File.ReadAllText(RepositoryPath.At("spec", "tutorial.md")).Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n');
        for (int line = 0; line < lines.Length; line++)
        {
            if (lines[line].StartsWith("```tutorial ", StringComparison.Ordinal))
            {
                int end = Array.IndexOf(lines, "```", line);
                yield return (line + 1, lines[line]["```tutorial ".Length..].Split(' '), string.Join('\n', lines[(line + 1)..end]) + "\n");
                line = end;
            }
        }
    }
}
