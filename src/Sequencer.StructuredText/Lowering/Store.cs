using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// The value of every slot at one point of the scan: what was written since <see cref="Branch"/>, over what the
/// store below holds. Null is "no value" (a VAR_TEMP not yet assigned on every way here).
/// </summary>
internal sealed class Store
{
    private readonly Store? _below;
    private readonly Dictionary<Slot, Expression?> _written = [];

    private Store(Store? below)
    {
        _below = below;
    }

    public static Store Empty() => new(null);

    public Store Branch() => new(this);

    public Expression? Get(Slot slot)
    {
        for (Store? store = this; store is not null; store = store._below)
        {
            if (store._written.TryGetValue(slot, out Expression? value))
            {
                return value;
            }
        }

        return slot.Entry;
    }

    public void Set(Slot slot, Expression? value) => _written[slot] = value;

    /// <summary>
    /// Takes over what the branches wrote: the first branch whose condition is true gives the value, else
    /// <paramref name="otherwise"/>. All are branches of this store.
    /// </summary>
    public void Merge(ExpressionBuilder builder, IReadOnlyList<(Expression Condition, Store Store)> branches, Store otherwise)
    {
        List<Slot> slots = [.. branches.Select(branch => branch.Store).Append(otherwise).SelectMany(store => store._written.Keys).Distinct()];
        foreach (Slot slot in slots)
        {
            Expression? merged = otherwise.Get(slot);
            for (int index = branches.Count - 1; index >= 0; index--)
            {
                (Expression condition, Store store) = branches[index];
                Expression? value = store.Get(slot);
                merged = condition.IsTrue ? value
                    : condition.IsFalse ? merged
                    : value is null || merged is null ? null
                    : builder.IfThenElse(condition, value, merged);
            }

            Set(slot, merged);
        }
    }
}
