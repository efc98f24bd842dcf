using System.CommandLine;
using System.Globalization;
using Sequencer.Sites;
using Sequencer.Sites.Trials;

namespace Sequencer.Cli.Commands;

/// <summary><c>sequencer trials SITE</c>: thousands of runs over tolerances, faults, recipes and operators.</summary>
internal static class TrialsCommand
{
    private const int MostRuns = 1_000_000;
    private const int MostParts = 10_000;

    private static readonly string[] Faults = ["none", "each", "pairs"];

    public static Command Create()
    {
        Argument<string> site = SiteArguments.Site();
        Option<string> output = SiteArguments.Output();
        Option<string?> runs = Number("--runs", "how many runs; with --faults each, of each fault (100 where nothing is said, 500 pairs, 1 of each fault)", "N", 1, MostRuns);
        Option<string?> seed = Number("--seed", "what all draws come from; 1 where nothing is said", "S", 0, int.MaxValue);
        Option<string?> threads = Number("--threads", "runs at a time; as many as the machine has processors where nothing is said", "T", 1, 1024);
        Option<string?> faults = new("--faults") { Description = "break nothing, every named fault alone (of the first scenario, beginning at one moment; --runs 5 tries five), or two of them in a run; none where nothing is said", HelpName = string.Join('|', Faults) };
        faults.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && !Faults.Contains(result.Tokens[0].Value, StringComparer.Ordinal))
            {
                result.AddError($"--faults: `{result.Tokens[0].Value}` is not known here; write {string.Join(" or ", Faults)}");
            }
        });
        Option<string?> shard = new("--shard") { Description = "play only this part of so many, as 2/8; the same command without it puts the parts together", HelpName = "i/n" };
        shard.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && Part(result.Tokens[0].Value) is null)
            {
                result.AddError($"--shard: `{result.Tokens[0].Value}` is no part of a whole; write the part, a stroke and how many there are, as 2/8");
            }
        });
        Option<bool> merge = new("--merge") { Description = "play nothing: put the parts together, and refuse where a run is missing" };
        Option<bool> json = SiteArguments.Json();
        Command command = new("trials", "Plays a scenario over and over with tolerances, faults and operators; goes on where it was ended.")
        {
            site, output, runs, seed, faults, shard, merge, threads, json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(merge) && result.GetValue(shard) is not null)
            {
                result.AddError("--merge puts all parts together: leave --shard away");
            }
        });
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(
            parsed.GetRequiredValue(site),
            parsed.GetRequiredValue(output),
            new TrialSettings
            {
                Runs = Read(parsed.GetValue(runs)),
                Seed = (ulong)(Read(parsed.GetValue(seed)) ?? 1),
                Faults = (TrialFaults)Math.Max(0, Array.IndexOf(Faults, parsed.GetValue(faults))),
                Shard = parsed.GetValue(shard) is string part ? Part(part) : null,
                MergeOnly = parsed.GetValue(merge),
                Threads = Read(parsed.GetValue(threads)) ?? Math.Max(1, Environment.ProcessorCount),
            },
            parsed.GetValue(json),
            cancellation)));
        return command;
    }

    private static int Run(string site, string output, TrialSettings settings, bool json, CancellationToken cancellation)
    {
        try
        {
            return Answer.Print(SiteCommands.Trials(site, output, settings, new ConsoleProgress(), cancellation), json);
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine($"stopped by hand: every run that was done is kept in {output}, and the same command goes on from there");
            return (int)Outcome.Undecided;
        }
    }

    private static Option<string?> Number(string name, string description, string shown, int least, int most)
    {
        Option<string?> option = new(name) { Description = description, HelpName = shown };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && (Read(result.Tokens[0].Value) is not int number || number < least || number > most))
            {
                result.AddError(string.Create(CultureInfo.InvariantCulture, $"{name}: `{result.Tokens[0].Value}` is no whole number from {least} to {most}"));
            }
        });
        return option;
    }

    private static int? Read(string? text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;

    private static (int Part, int Of)? Part(string text) =>
        text.Split('/') is [string part, string of] && Read(part) is int number && Read(of) is int all && number >= 1 && number <= all && all <= MostParts
            ? (number, all)
            : null;
}
