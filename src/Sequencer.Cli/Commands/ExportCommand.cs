using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer export SITE</c>: structured text for review.</summary>
internal static class ExportCommand
{
    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Option<string> output = SiteArguments.Output();
        Option<bool> json = SiteArguments.Json();
        Command command = new("export", "Writes the programs as IEC 61131-3 structured text.") { site, output, json };
        command.SetAction((parsed, cancellation) => Task.FromResult(Answer.Print(
            SiteCommands.Export(parsed.GetRequiredValue(site), parsed.GetRequiredValue(output), cancellation), parsed.GetValue(json))));
        return command;
    }
}
