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
        output.Required = false;
        Option<string?> compare = new("--compare")
        {
            Description = "write no text, but find out whether this one, edited by hand, still does what the programs do",
            HelpName = "FILE.st",
        };
        DialectArguments dialect = new();
        Option<bool> json = SiteArguments.Json();
        Command command = new("export", "Writes the programs as IEC 61131-3 structured text, or compares them with one.") { site, output, compare, json };
        dialect.All.ToList().ForEach(command.Options.Add);
        command.Validators.Add(result =>
        {
            if (result.GetValue(output) is null && result.GetValue(compare) is null)
            {
                result.AddError("Option '--out' is required");
            }

            if (result.GetValue(compare) is not null && result.GetValue(dialect.Exchange))
            {
                result.AddError("--exchange: with --compare no text is written; leave one of them out");
            }
        });
        command.SetAction((parsed, cancellation) => Task.FromResult(Answer.Print(
            parsed.GetValue(compare) is { } edited
                ? SiteCommands.Compare(parsed.GetRequiredValue(site), edited, dialect.Settings(parsed), parsed.GetValue(output), ProofArguments.Settings(afresh: false), cancellation)
                : SiteCommands.Export(parsed.GetRequiredValue(site), parsed.GetRequiredValue(output), dialect.Settings(parsed), cancellation),
            parsed.GetValue(json))));
        return command;
    }
}
