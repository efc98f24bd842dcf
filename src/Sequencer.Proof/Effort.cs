namespace Sequencer.Proof;

/// <summary>What a decision cost, in counts that are the same on every machine.</summary>
/// <param name="Queries">Questions put to solvers.</param>
/// <param name="Conflicts">Contradictions that solvers learnt from.</param>
/// <param name="Decisions">Guesses that solvers made.</param>
/// <param name="Propagations">Consequences that solvers drew.</param>
/// <param name="States">State variables in the requirement's slice.</param>
/// <param name="Depth">Scans unrolled, or frames of clause learning.</param>
/// <param name="Refinements">Times that facts were added to the abstraction.</param>
public sealed record Effort(
    long Queries,
    long Conflicts,
    long Decisions,
    long Propagations,
    int States,
    int Depth,
    int Refinements);
