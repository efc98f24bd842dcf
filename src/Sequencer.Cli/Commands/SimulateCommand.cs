using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer simulate SITE</c>: scenarios on the plant model.</summary>
internal static class SimulateCommand
{
    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Option<string> output = SiteArguments.Output();
        Option<string> scenario = new("--scenario") { Description = "only this scenario; without it all of them", HelpName = "NAME" };
        Option<bool> json = SiteArguments.Json();
        Command command = new("simulate", "Plays scenarios on the plant model: run record, trend, batch report; of the first the site figures.") { site, output, scenario, json };
        command.SetAction((parsed, cancellation) => Task.FromResult(Answer.Print(
            SiteCommands.Simulate(parsed.GetRequiredValue(site), parsed.GetRequiredValue(output), parsed.GetValue(scenario), new ConsoleProgress(), cancellation),
            parsed.GetValue(json))));
        return command;
    }
}
