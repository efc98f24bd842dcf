using Sequencer.Proof.Remembering;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites;

/// <summary>How <c>prove</c> goes about it.</summary>
public sealed record ProofSettings
{
    public static ProofSettings Default { get; } = new();

    /// <summary>Requirements decided at a time; a verdict does not depend on it.</summary>
    public int Degree { get; init; } = 2;

    /// <summary>Only the requirements of these names, or those that begin with one and a dot; empty is all.</summary>
    public IReadOnlyList<string> Only { get; init; } = [];

    /// <summary>Also what every unit owes without being asked, and ways to steps and transitions.</summary>
    public bool Obligations { get; init; } = true;

    /// <summary>Also says what each verdict leans on, what fails without each protection, and what never happens.</summary>
    public bool Insight { get; init; }

    /// <summary>Also looks, for each `never` and `always` that fails, for the smallest addition to a program that makes it hold.</summary>
    public bool Propose { get; init; }

    /// <summary>The folder in which invariants found before are kept; null is none.</summary>
    public string? MemoryFolder { get; init; }

    internal IProofMemory? Memory => MemoryFolder is null ? null : ProofFolder.In(MemoryFolder);
}
