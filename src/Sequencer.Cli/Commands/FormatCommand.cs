using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer format SITE|FILE.seq</c>: programs in their one layout.</summary>
internal static class FormatCommand
{
    public static Command Create()
    {
        Argument<string> path = new("SITE|FILE.seq") { Description = "the site's folder, the one with site.yaml in it, or one program" };
        Option<bool> check = new("--check") { Description = "change nothing; exit code 1 if a file would change" };
        Option<bool> json = SiteArguments.Json();
        Command command = new("format", "Brings programs into the one layout; only blanks and line ends change.") { path, check, json };
        command.SetAction(parsed => Answer.Print(ProgramLayout.Format(parsed.GetRequiredValue(path), parsed.GetValue(check)), parsed.GetValue(json)));
        return command;
    }
}
