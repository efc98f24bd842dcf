using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>What decision diagrams may cost, in counts that are the same on every machine.</summary>
internal sealed class DiagramBudget
{
    private readonly long _steps;
    private readonly Budget _whole;

    /// <param name="options">The limits; nodes are rounded up to a power of two.</param>
    /// <param name="whole">The decision's budget, whose cancellation counts here.</param>
    public DiagramBudget(ProofOptions options, Budget whole)
    {
        Bits = options.DiagramBits;
        Nodes = options.DiagramNodes;
        Rings = options.DiagramRings;
        _steps = options.DiagramSteps;
        _whole = whole;
    }

    public int Bits { get; }

    public int Nodes { get; }

    public int Rings { get; }

    public long StepsDone { get; private set; }

    /// <exception cref="DiagramLimitException">No step is left.</exception>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public void CountSteps(int count)
    {
        _whole.ThrowIfCancelled();
        StepsDone += count;
        if (StepsDone > _steps)
        {
            throw new DiagramLimitException(FormattableString.Invariant($"the diagrams took more than {_steps} steps"));
        }
    }
}
