using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer verify SITE</c>: the main job, all stages into one folder with one summary.</summary>
internal static class VerifyCommand
{
    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Option<string> output = SiteArguments.Output();
        DialectArguments dialect = new();
        Option<bool> json = SiteArguments.Json();
        Option<bool> afresh = ProofArguments.Afresh();
        Command command = new("verify", "Checks, proves, simulates and exports a site into one folder, with one summary.") { site, output, afresh, json };
        dialect.All.ToList().ForEach(command.Options.Add);
        command.SetAction((parsed, cancellation) => Task.FromResult(Answer.Print(
            SiteCommands.Verify(
                parsed.GetRequiredValue(site),
                parsed.GetRequiredValue(output),
                dialect.Settings(parsed),
                ProofArguments.Settings(parsed.GetValue(afresh)),
                new ConsoleProgress(),
                cancellation),
            parsed.GetValue(json))));
        return command;
    }
}
