using System.Diagnostics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>A value that is a multiple of one leaf and a number: factor times the leaf, plus the offset. A known number has no leaf (-1) and factor 0.</summary>
internal readonly record struct StraightForm(int Leaf, long Factor, long Offset)
{
    public static StraightForm Number(long value) => new(-1, 0, value);

    public static StraightForm Of(int leaf) => new(leaf, 1, 0);

    /// <summary>Null where they have two leaves.</summary>
    public static StraightForm? Sum(StraightForm? first, StraightForm? second) =>
        first is not { } one || second is not { } other ? null
        : one.Leaf < 0 ? other with { Offset = one.Offset + other.Offset }
        : other.Leaf < 0 || one.Leaf == other.Leaf ? new StraightForm(one.Leaf, one.Factor + other.Factor, one.Offset + other.Offset)
        : null;

    public StraightForm Times(long factor) => new(Leaf, factor * Factor, factor * Offset);

    /// <summary>For which values of the leaf this, less or equal to or the same as 0, comes out as it should; null where they do not lie together.</summary>
    /// <param name="kind">less: below 0; less or equal: not above 0; equal: 0</param>
    /// <param name="outcome">whether it should be so</param>
    /// <param name="instruction">whose outcome it is</param>
    public Guard? Against0(ExpressionKind kind, bool outcome, int instruction)
    {
        if (Factor == 0 || (kind == ExpressionKind.Equal && !outcome))
        {
            return null;
        }

        Guard open = Guard.Open(Leaf);
        return (kind, outcome) switch
        {
            (ExpressionKind.Less, true) => NotAbove(-1, instruction),
            (ExpressionKind.Less, false) => Times(-1).NotAbove(0, instruction),
            (ExpressionKind.LessOrEqual, true) => NotAbove(0, instruction),
            (ExpressionKind.LessOrEqual, false) => Times(-1).NotAbove(-1, instruction),
            (ExpressionKind.Equal, true) => open.Within(NotAbove(0, instruction)).Within(Times(-1).NotAbove(0, instruction)),
            _ => throw new UnreachableException($"no comparison: {kind}"),
        };
    }

    /// <summary>Where factor times leaf plus offset is not above a number.</summary>
    private Guard NotAbove(long most, int instruction)
    {
        long room = most - Offset;
        return Factor > 0
            ? Guard.Open(Leaf) with { Maximum = Down(room, Factor), AboveMaximum = instruction }
            : Guard.Open(Leaf) with { Minimum = -Down(room, -Factor), BelowMinimum = instruction };
    }

    private static long Down(long whole, long part) => (whole / part) - (whole % part < 0 ? 1 : 0);
}
