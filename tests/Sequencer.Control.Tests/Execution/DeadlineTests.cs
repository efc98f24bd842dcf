using CsCheck;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Tests.Execution;

public sealed class DeadlineTests
{
    private const int ScansLookedAt = 60;

    /// <summary>Against looking at each scan.</summary>
    [Fact]
    public void A_comparison_keeps_its_outcome_for_as_many_scans_as_it_says() =>
        Gen.Select(Gen.OneOf(Gen.Const(ExpressionKind.Equal), Gen.Const(ExpressionKind.Less), Gen.Const(ExpressionKind.LessOrEqual)), Gen.Long[-20, 20], Gen.Long[-20, 20], Gen.Long[-4, 4], Gen.Long[-4, 4])
            .Sample((kind, first, second, firstStep, secondStep) =>
            {
                bool outcome = Compare(kind, first, second);
                long counted = 1;
                while (counted < ScansLookedAt && Compare(kind, first + (counted * firstStep), second + (counted * secondStep)) == outcome)
                {
                    counted++;
                }

                long told = new Deadline(kind, 0, 1, firstStep - secondStep, outcome).Scans([first, second]);
                return counted == ScansLookedAt ? told >= ScansLookedAt : told == counted;
            });

    private static bool Compare(ExpressionKind kind, long first, long second) => kind switch
    {
        ExpressionKind.Equal => first == second,
        ExpressionKind.Less => first < second,
        _ => first <= second,
    };
}
