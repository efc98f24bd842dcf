using System.CommandLine;
using Sequencer.Sites.Dosing;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer dose FILE.csv</c>: from a titration to the reagent that a batch takes.</summary>
internal static class DoseCommand
{
    public static Command Create()
    {
        Argument<string> path = new("FILE.csv") { Description = "the titration of a sample, with the batch, the reagent and the pH wanted" };
        Option<string> output = SiteArguments.Output();
        output.Required = false;
        Option<bool> json = SiteArguments.Json();
        Command command = new("dose", "Reckons from a titration what reagent a batch takes, and how sure that is; with --out also draws the curve.") { path, output, json };
        command.SetAction(parsed => Answer.Print(DoseCalculation.Run(parsed.GetRequiredValue(path), parsed.GetValue(output)), parsed.GetValue(json)));
        return command;
    }
}
