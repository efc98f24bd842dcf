namespace Sequencer.Proof.Satisfiability;

/// <summary>The clauses that watch one literal, each with another of its literals that spares a look at the clause.</summary>
internal struct WatchList
{
    public Watch[]? Items;
    public int Count;

    public void Add(int clause, Literal blocker)
    {
        Items ??= new Watch[4];
        if (Count == Items.Length)
        {
            Array.Resize(ref Items, 2 * Count);
        }

        Items[Count++] = new Watch(clause, blocker);
    }

    public readonly record struct Watch(int Clause, Literal Blocker);
}
