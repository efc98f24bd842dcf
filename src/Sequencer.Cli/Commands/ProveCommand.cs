using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer prove SITE</c>: a verdict for each requirement.</summary>
internal static class ProveCommand
{
    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Option<string> output = SiteArguments.Output();
        output.Required = false;
        Option<bool> json = SiteArguments.Json();
        Command command = new("prove", "Decides every requirement; with --out also writes certificates and traces.") { site, output, json };
        command.SetAction((parsed, cancellation) => Task.FromResult(Answer.Print(
            SiteCommands.Prove(parsed.GetRequiredValue(site), parsed.GetValue(output), new ConsoleProgress(), cancellation), parsed.GetValue(json))));
        return command;
    }
}
