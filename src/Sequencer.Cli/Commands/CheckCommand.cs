using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer check SITE</c>: every mistake in one pass; with <c>--mend</c> the plain ones are mended first.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Option<bool> mend = new("--mend") { Description = "first mend in the files whatever can be mended in one way only, and show what was changed" };
        Option<bool> json = SiteArguments.Json();
        Command command = new("check", "Lists every mistake in the site's files, with place, reason and mend.") { site, mend, json };
        command.SetAction(parsed => Answer.Print(
            parsed.GetValue(mend) ? SiteCommands.Mend(parsed.GetRequiredValue(site)) : SiteCommands.Check(parsed.GetRequiredValue(site)),
            parsed.GetValue(json)));
        return command;
    }
}
