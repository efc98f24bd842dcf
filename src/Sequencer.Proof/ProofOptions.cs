namespace Sequencer.Proof;

/// <summary>How much a decision may cost. A limit in time is the caller's cancellation token.</summary>
public sealed record ProofOptions
{
    public static ProofOptions Default { get; } = new();

    /// <summary>Contradictions that all solvers of one requirement may learn from together.</summary>
    public long Conflicts { get; init; } = 20_000_000;

    /// <summary>Scans that the bounded search looks ahead before clause learning starts.</summary>
    public int BoundedDepth { get; init; } = 10;

    /// <summary>How often the abstraction may be refined.</summary>
    public int Refinements { get; init; } = 2_000;

    /// <summary>Seeds the guided search.</summary>
    public int Seed { get; init; } = 1;
}
