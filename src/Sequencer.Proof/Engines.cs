namespace Sequencer.Proof;

/// <summary>Ways to decide a requirement, so that one may be tried without the others.</summary>
[Flags]
public enum Engines
{
    None = 0,

    /// <summary>From the ranges and assumptions of one scan alone.</summary>
    Ranges = 1,

    /// <summary>Unrolling a few scans from the initial state.</summary>
    Bounded = 2,

    /// <summary>Clause learning over facts, with all that helps it.</summary>
    Learning = 4,

    /// <summary>All reachable states at once, as decision diagrams.</summary>
    Diagrams = 8,

    /// <summary>The guesses that come with a requirement.</summary>
    Guesses = 16,

    All = Ranges | Guesses | Bounded | Learning | Diagrams,
}
