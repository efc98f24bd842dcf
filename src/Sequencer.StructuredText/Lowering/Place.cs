using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Types;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// What a path stands for: one member, or with an index that only the run tells, one of several, of which the first whose condition is true;
/// the last needs none.
/// </summary>
internal sealed record Place(ImmutableArray<(Expression Condition, Member Member)> Alternatives, bool IsInsideBlock)
{
    /// <summary>The member, where there is no choice.</summary>
    public Member? Only => Alternatives is [var one] ? one.Member : null;

    public Member Any => Alternatives[0].Member;

    /// <summary>The type of its values; null for a block.</summary>
    public DataType? Type => Any switch { Slot slot => slot.Type, CompoundMember compound => compound.Type, _ => null };

    /// <summary>The values of its elementary variables; null in place of one without a value.</summary>
    public ImmutableArray<Expression?> Read(ExpressionBuilder builder, Store store, RangeFacts facts)
    {
        ImmutableArray<Expression?> values = [.. Alternatives[^1].Member.Leaves().Select(slot => store.Get(slot, facts))];
        for (int index = Alternatives.Length - 2; index >= 0; index--)
        {
            (Expression condition, Member member) = Alternatives[index];
            values = [.. member.Leaves().Zip(values, (slot, other) =>
                other is not null && store.Get(slot, facts) is { } value ? builder.IfThenElse(condition, value, other) : null)];
        }

        return values;
    }

    /// <summary>Gives its elementary variables their values; where it is one of several, the others keep theirs.</summary>
    public void Write(ExpressionBuilder builder, Store store, ImmutableArray<Expression> values)
    {
        Expression earlier = builder.False;
        foreach ((Expression condition, Member member) in Alternatives)
        {
            Expression chosen = Alternatives.Length == 1 ? builder.True : builder.And(condition, builder.Not(earlier));
            foreach ((Slot slot, Expression value) in member.Leaves().Zip(values))
            {
                store.Set(builder, slot, chosen, value);
            }

            earlier = builder.Or(earlier, condition);
        }
    }
}
