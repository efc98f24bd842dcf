using System.CommandLine;
using System.Globalization;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary>Options of the commands that prove.</summary>
internal static class ProofArguments
{
    private static readonly (string Symbol, double Seconds)[] Units = [("ms", 0.001), ("min", 60), ("s", 1), ("h", 3600)];

    /// <summary>A time budget, as <c>90s</c> or <c>5min</c>.</summary>
    public static Option<string?> Budget()
    {
        Option<string?> budget = new("--budget")
        {
            Description = "stop proving after this time, as 90s or 5min; what is not finished by then is undecided, what is finished is kept",
            HelpName = "TIME",
        };
        budget.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && Time(result.Tokens[0].Value) is null)
            {
                result.AddError($"--budget: `{result.Tokens[0].Value}` is no time; write a number and ms, s, min or h, as 90s");
            }
        });
        return budget;
    }

    public static Option<bool> Afresh() => new("--afresh") { Description = "prove everything anew, without what was proved in earlier runs" };

    public static ProofSettings Settings(bool afresh) => new() { Degree = Math.Max(1, Environment.ProcessorCount), MemoryFolder = afresh ? null : Memory() };

    /// <summary>Does the work under a token that ends with the budget, or when the user stops it.</summary>
    public static int Within(string? budget, Func<CancellationToken, int> work, CancellationToken stopped)
    {
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(stopped);
        if (budget is not null && Time(budget) is { } time)
        {
            limit.CancelAfter(time);
        }

        int exit = work(limit.Token);
        if (limit.IsCancellationRequested)
        {
            Console.Error.WriteLine(stopped.IsCancellationRequested
                ? "stopped by hand: what was finished by then is kept, the rest is undecided"
                : $"the budget of {budget} is over: what was finished by then is kept, the rest is undecided");
        }

        return exit;
    }

    /// <summary>The user's folder for caches (<c>XDG_CACHE_HOME</c> of the XDG base directory specification, else <c>~/.cache</c>); null without a home.</summary>
    private static string? Memory()
    {
        string? cache = Environment.GetEnvironmentVariable("XDG_CACHE_HOME");
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        string folder = cache is not null && Path.IsPathFullyQualified(cache) ? cache : home.Length > 0 ? Path.Combine(home, ".cache") : "";
        return folder.Length == 0 ? null : Path.Combine(folder, "sequencer", "proofs");
    }

    private static TimeSpan? Time(string text)
    {
        foreach ((string symbol, double seconds) in Units)
        {
            if (text.EndsWith(symbol, StringComparison.Ordinal)
                && double.TryParse(text.AsSpan(0, text.Length - symbol.Length).Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number)
                && number > 0 && number * seconds < int.MaxValue / 1000)
            {
                return TimeSpan.FromSeconds(number * seconds);
            }
        }

        return null;
    }
}
