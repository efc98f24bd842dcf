using System.CommandLine;
using Sequencer.Sites;
using Sequencer.Text;

namespace Sequencer.Cli;

/// <summary>Says on standard error what is wrong with a command line, in our words and without a page of help.</summary>
internal static class BadUsage
{
    public static int Explain(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        if (command is RootCommand)
        {
            string[] names = [.. command.Subcommands.Select(sub => sub.Name)];
            string said = parsed.UnmatchedTokens.Count == 0 ? "no command was given" : $"there is no command `{parsed.UnmatchedTokens[0]}`";
            string? near = parsed.UnmatchedTokens.Count == 0 ? null : NearestWord.Find(parsed.UnmatchedTokens[0], names);
            Console.Error.WriteLine(near is null ? $"{said}; the commands are {string.Join(", ", names)}" : $"{said}; did you mean `{near}`?");
            Console.Error.WriteLine("sequencer --help tells what each does");
            return (int)Outcome.NotDone;
        }

        foreach (string message in parsed.Errors.Select(error => error.Message.TrimEnd('.')).Distinct())
        {
            Console.Error.WriteLine(message);
        }

        Console.Error.WriteLine($"sequencer {command.Name} --help tells how to use it");
        return (int)Outcome.NotDone;
    }
}
