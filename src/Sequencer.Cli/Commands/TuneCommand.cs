using System.CommandLine;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer tune SITE TREND.csv</c>: settings of doses from a recorded trend, as a change to review.</summary>
internal static class TuneCommand
{
    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Argument<string> trend = new("TREND.csv") { Description = "what the plant recorded while it dosed: time s, readings, pumps as 0 and 1" };
        Option<string> output = SiteArguments.Output();
        output.Required = false;
        Option<bool> json = SiteArguments.Json();
        Command command = new("tune", "Finds dead time and lag in a recorded trend and proposes the settings of doses; changes nothing.") { site, trend, output, json };
        command.SetAction(parsed => Answer.Print(
            SiteCommands.Tune(parsed.GetRequiredValue(site), parsed.GetRequiredValue(trend), parsed.GetValue(output)), parsed.GetValue(json)));
        return command;
    }
}
