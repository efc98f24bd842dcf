namespace Sequencer.Proof;

/// <summary>How much a decision may cost. A limit in time is the caller's cancellation token.</summary>
public sealed record ProofOptions
{
    public static ProofOptions Default { get; } = new();

    /// <summary>Contradictions that all solvers of one requirement may learn from together.</summary>
    public long Conflicts { get; init; } = 20_000_000;

    /// <summary>
    /// Consequences that all solvers of one requirement may draw together: what nobody answers is given up after some ten minutes of a
    /// processor, and needs no budget in time. The demonstration sites need a hundredth of it.
    /// </summary>
    public long Propagations { get; init; } = 4_000_000_000;

    /// <summary>Scans that the bounded search looks ahead before clause learning starts.</summary>
    public int BoundedDepth { get; init; } = 10;

    /// <summary>How often the abstraction may be refined.</summary>
    public int Refinements { get; init; } = 2_000;

    /// <summary>Seeds the guided search.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>The engines that may be used; the answer is checked alike, whichever found it.</summary>
    public Engines Engines { get; init; } = Engines.All;

    /// <summary>Bits that the states of a slice may have for decision diagrams to be tried.</summary>
    public int DiagramBits { get; init; } = 600;

    /// <summary>Nodes that decision diagrams may have at a time.</summary>
    public int DiagramNodes { get; init; } = 1 << 18;

    /// <summary>Results that decision diagrams may work out.</summary>
    public long DiagramSteps { get; init; } = 20_000_000;

    /// <summary>Sets of states, each a scan further, that decision diagrams may go through.</summary>
    public int DiagramRings { get; init; } = 1_000;
}
