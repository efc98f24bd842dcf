namespace Sequencer.Proof.Satisfiability;

/// <summary>
/// What one decision may spend, shared by every solver it uses. Time comes only through the token:
/// counts are the same on every machine.
/// </summary>
internal sealed class Budget(long conflicts, CancellationToken cancellation)
{
    private long _conflictsLeft = conflicts;

    public long Conflicts { get; private set; }

    public long Decisions { get; private set; }

    public long Propagations { get; private set; }

    public long Queries { get; private set; }

    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public void ThrowIfCancelled() => cancellation.ThrowIfCancellationRequested();

    public void CountQuery()
    {
        ThrowIfCancelled();
        Queries++;
    }

    /// <exception cref="BudgetSpentException">No conflict is left.</exception>
    public void CountConflict()
    {
        Conflicts++;
        if (--_conflictsLeft < 0)
        {
            throw new BudgetSpentException();
        }

        if ((Conflicts & 0xff) == 0)
        {
            ThrowIfCancelled();
        }
    }

    public void CountDecision() => Decisions++;

    public void CountPropagations(long count) => Propagations += count;
}
