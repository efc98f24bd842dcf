using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Systems;

/// <summary>Random systems with few enough states and inputs to visit them all.</summary>
internal static class SmallRandomSystem
{
    public static TransitionSystem Create(int seed)
    {
        Random random = new(seed);
        Sketch sketch = new();
        List<Expression> booleans = [sketch.Input("i0"), sketch.Input("i1")];
        List<Expression> integers = [sketch.Input("n0", -1, 2)];
        List<Expression> states = [];
        for (int number = 0; number < 2 + random.Next(3); number++)
        {
            states.Add(sketch.State($"b{number}", random.Next(2) == 0));
        }

        for (int number = 0; number < 1 + random.Next(3); number++)
        {
            long highest = random.Next(2) == 0 ? random.Next(2, 6) : random.Next(13, 20);
            states.Add(sketch.State($"c{number}", random.Next(-1, 1), highest, random.Next(0, 2)));
        }

        foreach (Expression state in states)
        {
            (state.Sort == Sort.Boolean ? booleans : integers).Add(state);
        }

        for (int count = 0; count < 14; count++)
        {
            Combine(sketch, random, booleans, integers);
        }

        foreach (Expression state in states)
        {
            sketch.Next(state, Next(sketch, random, state, booleans, integers));
        }

        if (random.Next(3) == 0)
        {
            sketch.Assume("A1", sketch.Or(Pick(random, booleans), Pick(random, booleans)));
        }

        sketch.Never("H1", Pick(random, booleans), Pick(random, booleans), Pick(random, booleans));
        return sketch.ToSystem();
    }

    private static Expression Next(Sketch sketch, Random random, Expression state, List<Expression> booleans, List<Expression> integers)
    {
        ExpressionBuilder builder = sketch.Builder;
        if (state.Sort == Sort.Boolean)
        {
            return random.Next(2) == 0
                ? sketch.And(sketch.Or(state, Pick(random, booleans)), sketch.Not(Pick(random, booleans)))
                : Pick(random, booleans);
        }

        Expression lowest = builder.Constant(state.Range.Minimum);
        return random.Next(3) switch
        {
            0 => builder.IfThenElse(Pick(random, booleans), sketch.CountedUp(state), lowest),
            1 => builder.IfThenElse(Pick(random, booleans), sketch.CountedUp(state), builder.IfThenElse(Pick(random, booleans), lowest, state)),
            _ => builder.Maximum(lowest, builder.Minimum(builder.Constant(state.Range.Maximum), Pick(random, integers))),
        };
    }

    private static void Combine(Sketch sketch, Random random, List<Expression> booleans, List<Expression> integers)
    {
        ExpressionBuilder builder = sketch.Builder;
        Expression integer = Pick(random, integers);
        Expression made = random.Next(9) switch
        {
            0 => sketch.And(Pick(random, booleans), Pick(random, booleans)),
            1 => sketch.Or(Pick(random, booleans), sketch.Not(Pick(random, booleans))),
            2 => builder.Equal(Pick(random, booleans), Pick(random, booleans)),
            3 => builder.LessOrEqual(integer, Pick(random, integers)),
            4 => builder.Less(integer, builder.Constant(random.NextInt64(integer.Range.Minimum, integer.Range.Maximum + 1))),
            5 => builder.Equal(integer, builder.Constant(random.NextInt64(integer.Range.Minimum, integer.Range.Maximum + 1))),
            6 => builder.Add(integer, builder.Constant(random.Next(-2, 3))),
            7 => builder.Add(builder.Scale(random.Next(-2, 3), integer), Pick(random, integers)),
            _ => builder.IfThenElse(Pick(random, booleans), Pick(random, integers), integer),
        };
        (made.Sort == Sort.Boolean ? booleans : integers).Add(made);
    }

    private static Expression Pick(Random random, List<Expression> from) => from[random.Next(from.Count)];
}
