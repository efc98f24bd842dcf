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
        Option<bool> propose = new("--propose")
        {
            Description = "also look, for each `never` and `always` that fails, for the smallest addition to a program that mends it; nothing is changed",
        };
        Option<string[]> only = new("--only")
        {
            Description = "only this requirement, or all whose names begin with it and a dot (as a unit's name); may be given more than once",
            HelpName = "NAME",
        };
        Option<string?> budget = ProofArguments.Budget();
        Option<bool> afresh = ProofArguments.Afresh();
        Command command = new("prove", "Decides every requirement and what every unit owes; with --out also writes certificates and traces.")
        {
            site, output, only, insight, propose, budget, afresh, json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(insight) && result.GetValue(only) is { Length: > 0 })
            {
                result.AddError("--insight is about all requirements: leave --only away");
            }

            if (result.GetValue(propose) && result.GetValue(only) is { Length: > 0 })
            {
                result.AddError("--propose shows that all requirements that hold still hold: leave --only away");
            }
        });
        command.SetAction((parsed, cancellation) => Task.FromResult(ProofArguments.Within(parsed.GetValue(budget), token => Answer.Print(
            SiteCommands.Prove(
                parsed.GetRequiredValue(site),
                parsed.GetValue(output),
                ProofArguments.Settings(parsed.GetValue(afresh)) with { Only = parsed.GetValue(only) ?? [], Insight = parsed.GetValue(insight), Propose = parsed.GetValue(propose) },
                new ConsoleProgress(),
                token),
            parsed.GetValue(json)), cancellation)));
        return command;
    }
}
