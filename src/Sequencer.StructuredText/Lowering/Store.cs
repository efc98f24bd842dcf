using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// The value of every slot at one point of the scan: what was written since <see cref="Branch"/>, over what the
/// store below holds. Null is "no value" (a VAR_TEMP not yet assigned on every way here).
/// </summary>
internal sealed class Store
{
    private readonly Store? _below;
    private readonly Dictionary<Slot, Content> _written = [];

    private readonly Func<Slot, Expression>? _unknown;

    private Store(Store? below, Func<Slot, Expression>? unknown = null)
    {
        _below = below;
        _unknown = unknown;
    }

    public static Store Empty() => new(null);

    /// <summary>A store that knows of no value, and takes one from the function where a variable has none of its own.</summary>
    public static Store Of(Func<Slot, Expression> unknown) => new(null, unknown);

    public Store Branch() => new(this, _unknown);

    /// <summary>The value, or null where there is a way here on which it has none.</summary>
    public Expression? Get(Slot slot) => Find(slot) is { Missing: null } content ? content.Value : null;

    /// <summary>The same, where what is known of the way here may rule out that it has none.</summary>
    public Expression? Get(Slot slot, RangeFacts facts) =>
        Find(slot) is var content && (content.Missing is null || facts.Assume(content.Missing).IsImpossible) ? content.Value : null;

    public void Set(Slot slot, Expression? value) => _written[slot] = new Content(value, null);

    /// <summary>Sets it where the condition is true.</summary>
    public void Set(ExpressionBuilder builder, Slot slot, Expression condition, Expression value) =>
        _written[slot] = Choose(builder, condition, new Content(value, null), Find(slot));

    /// <summary>
    /// Takes over what the branches wrote: the first branch whose condition is true gives the value, else
    /// <paramref name="otherwise"/>. All are branches of this store.
    /// </summary>
    public void Merge(ExpressionBuilder builder, IReadOnlyList<(Expression Condition, Store Store)> branches, Store otherwise)
    {
        List<Slot> slots = [.. branches.Select(branch => branch.Store).Append(otherwise).SelectMany(store => store._written.Keys).Distinct()];
        foreach (Slot slot in slots)
        {
            Content merged = otherwise.Find(slot);
            for (int index = branches.Count - 1; index >= 0; index--)
            {
                (Expression condition, Store store) = branches[index];
                merged = Choose(builder, condition, store.Find(slot), merged);
            }

            _written[slot] = merged;
        }
    }

    private static Content Choose(ExpressionBuilder builder, Expression condition, Content then, Content otherwise)
    {
        if (condition.IsConstant)
        {
            return condition.IsTrue ? then : otherwise;
        }

        Expression? value = then.Value is null ? otherwise.Value : otherwise.Value is null ? then.Value : Choose(builder, condition, then.Value, otherwise.Value);
        if (value is null || (then.Value is not null && otherwise.Value is not null && then.Missing is null && otherwise.Missing is null))
        {
            return new Content(value, null);
        }

        // Written so that a way contradicts the one before it where they meet.
        Expression missing = builder.Or(
            builder.And(condition, Missing(builder, then)),
            builder.And(builder.Not(condition), Missing(builder, otherwise)));
        return missing.IsTrue ? default : new Content(value, missing.IsFalse ? null : missing);
    }

    /// <summary>Where the condition itself is a value, as for a jump that was done, that value is known on its side.</summary>
    private static Expression Choose(ExpressionBuilder builder, Expression condition, Expression then, Expression otherwise)
    {
        if (then.Sort == Sort.Boolean)
        {
            Expression negated = builder.Not(condition);
            then = then == condition ? builder.True : then == negated ? builder.False : then;
            otherwise = otherwise == condition ? builder.False : otherwise == negated ? builder.True : otherwise;
        }

        return builder.IfThenElse(condition, then, otherwise);
    }

    private static Expression Missing(ExpressionBuilder builder, Content content) =>
        content.Value is null ? builder.True : content.Missing ?? builder.False;

    private Content Find(Slot slot)
    {
        for (Store? store = this; store is not null; store = store._below)
        {
            if (store._written.TryGetValue(slot, out Content value))
            {
                return value;
            }
        }

        return new Content(slot.Entry ?? _unknown?.Invoke(slot), null);
    }

    /// <summary>A value, and where it has one on some ways only, the condition under which it has none.</summary>
    private readonly record struct Content(Expression? Value, Expression? Missing);
}
