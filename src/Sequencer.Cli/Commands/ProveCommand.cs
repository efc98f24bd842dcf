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
        Option<bool> insight = new("--insight")
        {
            Description = "also say what each verdict leans on, what fails without each protection and what never happens; pages go to --out",
        };
        Command command = new("prove", "Decides every requirement; with --out also writes certificates and traces.") { site, output, insight, json };
        command.SetAction((parsed, cancellation) => Task.FromResult(Answer.Print(
            SiteCommands.Prove(parsed.GetRequiredValue(site), parsed.GetValue(output), parsed.GetValue(insight), new ConsoleProgress(), cancellation), parsed.GetValue(json))));
        return command;
    }
}
