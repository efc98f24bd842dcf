namespace Sequencer.Sites;

/// <summary>What a command found; the numbers are the exit codes.</summary>
public enum Outcome
{
    /// <summary>Everything asked holds.</summary>
    Holds = 0,

    /// <summary>There are mistakes, or something fails.</summary>
    Fails = 1,

    /// <summary>It could not be done: bad usage or unreadable input.</summary>
    NotDone = 2,

    /// <summary>Nothing fails, something is undecided.</summary>
    Undecided = 3,
}
