using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer check SITE</c>: every mistake in one pass.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Option<bool> json = SiteArguments.Json();
        Command command = new("check", "Lists every mistake in the site's files, with place, reason and mend.") { site, json };
        command.SetAction(parsed => Answer.Print(SiteCommands.Check(parsed.GetRequiredValue(site)), parsed.GetValue(json)));
        return command;
    }
}
