using CsCheck;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Tests.Execution;

public sealed class StraightFormTests
{
    private const int Leaf = 3;
    private const int Instruction = 5;

    /// <summary>Against comparing at each value of the leaf.</summary>
    [Fact]
    public void The_limits_of_a_leaf_are_those_at_which_a_comparison_turns() =>
        Gen.Select(Gen.OneOf(Gen.Const(ExpressionKind.Equal), Gen.Const(ExpressionKind.Less), Gen.Const(ExpressionKind.LessOrEqual)), Gen.Long[-6, 6], Gen.Long[-40, 40], Gen.Bool)
            .Sample((kind, factor, offset, outcome) =>
            {
                Guard? guard = new StraightForm(Leaf, factor, offset).Against0(kind, outcome, Instruction);
                if (guard is not { } limits)
                {
                    return factor == 0 || (kind == ExpressionKind.Equal && !outcome);
                }

                return Enumerable.Range(-100, 201).All(value => (Compare(kind, (factor * value) + offset) == outcome) == (value >= limits.Minimum && value <= limits.Maximum))
                    && (limits.Minimum == long.MinValue || limits.BelowMinimum == Instruction)
                    && (limits.Maximum == long.MaxValue || limits.AboveMaximum == Instruction);
            });

    [Fact]
    public void Sums_and_multiples_keep_one_leaf_and_give_up_two()
    {
        StraightForm leaf = StraightForm.Of(1);
        Assert.Equal(new StraightForm(1, -2, 7), StraightForm.Sum(leaf.Times(-2), StraightForm.Number(7)));
        Assert.Equal(new StraightForm(1, 4, -3), StraightForm.Sum(leaf.Times(3), StraightForm.Sum(leaf, StraightForm.Number(-3))));
        Assert.Equal(new StraightForm(-1, 0, 12), StraightForm.Sum(StraightForm.Number(5), StraightForm.Number(7)));
        Assert.Null(StraightForm.Sum(leaf, StraightForm.Of(2)));
        Assert.Null(StraightForm.Sum(null, leaf));
    }

    private static bool Compare(ExpressionKind kind, long value) => kind switch
    {
        ExpressionKind.Equal => value == 0,
        ExpressionKind.Less => value < 0,
        _ => value <= 0,
    };
}
