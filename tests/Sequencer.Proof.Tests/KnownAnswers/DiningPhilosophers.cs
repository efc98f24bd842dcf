using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.KnownAnswers;

/// <summary>
/// The safe net of the Model Checking Contest (model Philosophers): philosopher k thinks, takes the left
/// fork first or the right fork first, then the other, eats, and gives both back. One event a scan.
/// </summary>
internal static class DiningPhilosophers
{
    private const int Think = 0;
    private const int HasLeft = 1;
    private const int HasRight = 2;
    private const int Eat = 3;

    /// <summary>Each philosopher is a state 0..3; fork k lies between k and k + 1 and is free if neither has it.</summary>
    public static TransitionSystem Create(int count)
    {
        Sketch sketch = new();
        Expression who = sketch.Input("who", 0, count - 1);
        Expression what = sketch.Input("what", 0, 1);
        Expression[] philosophers = [.. Enumerable.Range(0, count).Select(number => sketch.State($"philosopher{number}", 0, 3, Think))];
        for (int number = 0; number < count; number++)
        {
            Expression self = philosophers[number];
            Expression left = philosophers[(number + count - 1) % count];
            Expression right = philosophers[(number + 1) % count];
            Expression leftFree = sketch.Not(sketch.Or(sketch.Is(left, HasRight), sketch.Is(left, Eat)));
            Expression rightFree = sketch.Not(sketch.Or(sketch.Is(right, HasLeft), sketch.Is(right, Eat)));
            Expression moves = sketch.Is(who, number);
            Expression first = sketch.Is(what, 0);
            Expression next = sketch.Choose(
                self,
                (sketch.And(moves, sketch.Is(self, Think), first, leftFree), HasLeft),
                (sketch.And(moves, sketch.Is(self, Think), sketch.Not(first), rightFree), HasRight),
                (sketch.And(moves, sketch.Is(self, HasLeft), rightFree), Eat),
                (sketch.And(moves, sketch.Is(self, HasRight), leftFree), Eat),
                (sketch.And(moves, sketch.Is(self, Eat)), Think));
            sketch.Next(self, next);
        }

        sketch.Never("neighbours eat", sketch.Is(philosophers[0], Eat), sketch.Is(philosophers[1], Eat));
        return sketch.ToSystem();
    }
}
