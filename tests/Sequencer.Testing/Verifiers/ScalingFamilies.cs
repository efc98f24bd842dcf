using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Testing.Verifiers;

/// <summary>What batch programs are made of, in any size, each with a requirement that holds or, slightly broken, fails.</summary>
public static class ScalingFamilies
{
    /// <summary>Scans that each of the timers takes.</summary>
    public const int LongestTime = 100_000;

    public static ImmutableArray<(string Name, Func<int, bool, TransitionSystem> Create, ImmutableArray<int> Sizes)> All { get; } =
    [
        ("reactors at a header", Header, [3, 4, 6, 8, 12]),
        ("steps in a chain", Chain, [10, 50, 200, 500, 1_000, 2_000]),
        ("timers", (timers, broken) => Timers(timers, broken, LongestTime), [1, 2, 4, 8, 16]),
        ("device faults", Faults, [5, 10, 20, 50, 100, 200]),
    ];

    /// <summary>
    /// Reactors queue for a shared header; the first in the queue opens its valve. Never are two open. Broken: who comes while
    /// the first one leaves takes the place of the last (that needs three).
    /// </summary>
    public static TransitionSystem Header(int reactors, bool broken)
    {
        Sketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression comes = sketch.Input("comes", 0, reactors);
        Expression leaves = sketch.Input("leaves");
        Expression length = sketch.State("length", 0, reactors, 0);
        Expression[] places = [.. Enumerable.Range(0, reactors).Select(self => sketch.State($"place{self}", 0, reactors, 0))];
        Expression shrinks = sketch.And(leaves, sketch.AtLeast(length, 1));
        Expression left = builder.IfThenElse(shrinks, builder.Add(length, builder.Constant(-1L)), length);
        Expression last = builder.Minimum(builder.Constant((long)reactors), builder.Add(left, builder.Constant(1L)));
        Expression given = broken ? builder.IfThenElse(sketch.And(shrinks, sketch.AtLeast(left, 1)), left, last) : last;
        List<Expression> joins = [];
        for (int self = 0; self < reactors; self++)
        {
            Expression waits = sketch.AtLeast(places[self], 1);
            Expression moved = builder.IfThenElse(sketch.And(leaves, waits), builder.Add(places[self], builder.Constant(-1L)), places[self]);
            Expression joinsNow = sketch.And(sketch.Is(comes, self + 1), sketch.Not(waits));
            joins.Add(joinsNow);
            sketch.Next(places[self], Clamped(sketch, builder.IfThenElse(joinsNow, given, moved), reactors));
        }

        sketch.Next(length, Clamped(sketch, builder.IfThenElse(sketch.Or([.. joins]), given, left), reactors));
        Expression[] open = [.. places.Select(place => sketch.Is(place, 1))];
        sketch.Require("one open", sketch.Not(sketch.Or([.. Pairs(open).Select(pair => sketch.And(pair.First, pair.Second))])));
        return sketch.ToSystem();
    }

    /// <summary>One step after another, and back to the first by an abort. Never are the first and the last active at once. Broken: an abort leaves the last one on.</summary>
    public static TransitionSystem Chain(int steps, bool broken)
    {
        Sketch sketch = new();
        Expression go = sketch.Input("go");
        Expression abort = sketch.Input("abort");
        Expression[] active = [.. Enumerable.Range(0, steps).Select(step => sketch.State($"step{step}", step == 0))];
        for (int step = 0; step < steps; step++)
        {
            Expression enters = step == 0 ? abort : sketch.And(go, active[step - 1], sketch.Not(abort));
            Expression goes = step == steps - 1 ? abort : sketch.Or(go, abort);
            Expression stays = step == steps - 1 && broken ? active[step] : sketch.And(active[step], sketch.Not(goes));
            sketch.Next(active[step], sketch.Or(enters, stays));
        }

        sketch.Never("first and last", active[0], active[^1]);
        return sketch.ToSystem();
    }

    /// <summary>
    /// Timers that run while they are asked to, each with a latch when it is through, and a total of the first one's scans. When all
    /// are through the total is at least the time. Broken: it is said to be two scans more.
    /// </summary>
    public static TransitionSystem Timers(int timers, bool broken, int scans)
    {
        Sketch sketch = new();
        List<Expression> through = [];
        Expression total = sketch.State("total", 0, 2 * scans, 0);
        for (int timer = 0; timer < timers; timer++)
        {
            Expression runs = sketch.Input($"runs{timer}");
            Expression clock = sketch.State($"clock{timer}", 0, scans, 0);
            Expression latch = sketch.State($"through{timer}");
            sketch.Clock(clock, runs);
            sketch.Next(latch, sketch.Or(latch, sketch.AtLeast(clock, scans)));
            through.Add(latch);
            if (timer == 0)
            {
                sketch.Next(total, sketch.Builder.IfThenElse(runs, sketch.CountedUp(total), total));
            }
        }

        sketch.Require("time was taken", sketch.Builder.Implies(sketch.And([.. through]), sketch.AtLeast(total, broken ? scans + 2 : scans)));
        return sketch.ToSystem();
    }

    /// <summary>Faults of devices latch until a reset; a pump stops for any of them. Never does it run with a fault. Broken: the last one's does not stop it.</summary>
    public static TransitionSystem Faults(int devices, bool broken)
    {
        Sketch sketch = new();
        Expression start = sketch.Input("start");
        Expression reset = sketch.Input("reset");
        Expression pump = sketch.State("pump");
        List<Expression> faults = [];
        List<Expression> after = [];
        for (int device = 0; device < devices; device++)
        {
            Expression trips = sketch.Input($"trips{device}");
            Expression fault = sketch.State($"fault{device}");
            Expression next = sketch.Or(trips, sketch.And(fault, sketch.Not(reset)));
            sketch.Next(fault, next);
            faults.Add(fault);
            after.Add(next);
        }

        sketch.Next(pump, sketch.And(sketch.Or(start, pump), sketch.Not(sketch.Or([.. after.Take(broken ? devices - 1 : devices)]))));
        sketch.Never("pump with a fault", pump, sketch.Or([.. faults]));
        return sketch.ToSystem();
    }

    private static IEnumerable<(Expression First, Expression Second)> Pairs(Expression[] items) =>
        items.SelectMany((first, index) => items.Skip(index + 1).Select(second => (first, second)));

    private static Expression Clamped(Sketch sketch, Expression value, long most) =>
        sketch.Builder.Maximum(sketch.Builder.Constant(0L), sketch.Builder.Minimum(sketch.Builder.Constant(most), value));
}
