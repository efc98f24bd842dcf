namespace Sequencer.Proof.Satisfiability;

/// <summary>
/// What one decision may spend, shared by every solver it uses. Time comes only through the token:
/// counts are the same on every machine.
/// </summary>
internal sealed class Budget(long conflicts, CancellationToken cancellation, Budget? whole = null)
{
    private const long PropagationsBetweenLooks = 1_000_000;

    private long _conflictsLeft = conflicts;

    private long _propagationsLeft = long.MaxValue;

    /// <summary>Consequences that may be drawn in all: what bounds a search with many easy questions.</summary>
    public long MostPropagations { init => _propagationsLeft = value; }

    public long Conflicts { get; private set; }

    public long Decisions { get; private set; }

    public long Propagations { get; private set; }

    public long Queries { get; private set; }

    /// <summary>A part of this budget, for an engine that is only worth so much; what it spends counts here too.</summary>
    public Budget Part(long part) => new(part, cancellation, this);

    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public void ThrowIfCancelled() => cancellation.ThrowIfCancellationRequested();

    public void CountQuery()
    {
        ThrowIfCancelled();
        Queries++;
        whole?.CountQuery();
    }

    /// <exception cref="BudgetSpentException">No conflict is left.</exception>
    public void CountConflict()
    {
        Conflicts++;
        whole?.CountConflict();
        if (--_conflictsLeft < 0)
        {
            throw new BudgetSpentException();
        }

        if ((Conflicts & 0xff) == 0)
        {
            ThrowIfCancelled();
        }
    }

    public void CountDecision()
    {
        Decisions++;
        whole?.CountDecision();
    }

    /// <exception cref="BudgetSpentException">More consequences were drawn than may be.</exception>
    public void CountPropagations(long count)
    {
        Propagations += count;
        whole?.CountPropagations(count);
        _propagationsLeft -= count;
        if (_propagationsLeft < 0)
        {
            throw new BudgetSpentException();
        }

        if (Propagations / PropagationsBetweenLooks != (Propagations - count) / PropagationsBetweenLooks)
        {
            ThrowIfCancelled();
        }
    }
}
