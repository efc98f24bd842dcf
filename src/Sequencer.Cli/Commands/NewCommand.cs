using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer new FOLDER</c>: a small site that checks, proves and runs.</summary>
internal static class NewCommand
{
    public static Command Create()
    {
        Argument<string> folder = new("FOLDER") { Description = "a folder that does not exist yet; its last name becomes the site's" };
        Command command = new("new", "Makes a small site that checks, proves and runs, to start from.") { folder };
        command.SetAction(parsed =>
        {
            SiteResult result = NewSite.Create(parsed.GetRequiredValue(folder));
            return Answer.Print(result, json: false);
        });
        return command;
    }
}
