namespace Sequencer.Sites.Tests.Variants;

/// <summary>Who noticed that a program is broken, and by what.</summary>
/// <param name="By">The part of the tool; <see cref="Nobody"/> for a survivor.</param>
/// <param name="What">The codes, the requirement or the scenario that tells.</param>
public sealed record Finding(string By, string What)
{
    public const string Checker = "checker";
    public const string Prover = "prover";
    public const string Simulator = "simulator";

    /// <summary>No requirement fails and every scenario passes, but a requirement is no longer proved: exit code 3.</summary>
    public const string Unproved = "unproved";

    public const string Nobody = "nobody";
}
