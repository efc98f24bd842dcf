using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>Small systems whose invariants are found by thought.</summary>
internal static class CertifiedCases
{
    public static IReadOnlyDictionary<string, Func<CertifiedCase>> ByName { get; } = new SortedDictionary<string, Func<CertifiedCase>>(StringComparer.Ordinal)
    {
        ["counter"] = Counter,
        ["interlock"] = Interlock,
        ["latch"] = Latch,
        ["monitor"] = Monitor,
        ["timer"] = Timer,
    };

    /// <summary>Pulses are counted up to a maximum; what was given never passes it.</summary>
    public static CertifiedCase Counter()
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression pulse = sketch.Input("pulse", 0, 5);
        Expression start = sketch.Input("R101.start");
        Expression total = sketch.State("P201.total", 0, 1000, 0);
        Expression given = builder.Add(total, pulse);
        Expression allowed = builder.LessOrEqual(given, builder.Constant(350));
        sketch.Next(total, builder.IfThenElse(start, builder.Constant(0L), builder.IfThenElse(allowed, builder.Minimum(given, builder.Constant(1000)), total)));
        sketch.Output("P201", allowed);
        sketch.Require("H1", "never P201.total > 350", builder.LessOrEqual(total, builder.Constant(350)));
        return new CertifiedCase(
            sketch.Create("counter"),
            builder.LessOrEqual(total, builder.Constant(350)),
            builder.LessOrEqual(total, builder.Constant(349)));
    }

    /// <summary>A trip stays until reset; while it stays the motor stands.</summary>
    public static CertifiedCase Latch()
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression emergency = sketch.Input("ES001");
        Expression reset = sketch.Input("R101.reset");
        Expression demand = sketch.Input("P101.manual.demand");
        Expression latched = sketch.State("T1.latched");
        Expression last = sketch.State("P101.last");
        Expression trip = builder.Or(emergency, builder.And(latched, builder.Not(reset)));
        Expression motor = builder.And(demand, builder.Not(trip));
        sketch.Next(latched, trip);
        sketch.Next(last, motor);
        sketch.Define("T1.trips", trip);
        sketch.Output("P101", motor);
        sketch.Require("H3", "never T1 and P101 written", builder.Not(builder.And(latched, last)));
        return new CertifiedCase(
            sketch.Create("latch"),
            builder.Not(builder.And(latched, last)),
            builder.Not(last));
    }

    /// <summary>Two reagents, each barred while the other one runs; both commands never come together.</summary>
    public static CertifiedCase Interlock()
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression acid = sketch.Input("P201.manual.demand");
        Expression lime = sketch.Input("P202.manual.demand");
        Expression level = sketch.Input("LT101", -50, 6000);
        Expression acidLast = sketch.State("P201.last");
        Expression limeLast = sketch.State("P202.last");
        Expression volume = builder.LessOrEqual(level, builder.Constant(5500));
        Expression acidRuns = builder.And(acid, builder.Not(limeLast), volume);
        Expression limeRuns = builder.And(lime, builder.Not(acidLast), volume);
        sketch.Next(acidLast, acidRuns);
        sketch.Next(limeLast, limeRuns);
        sketch.Assume("A1", builder.Not(builder.And(acid, lime)));
        sketch.Output("P201", acidRuns);
        sketch.Output("P202", limeRuns);
        sketch.Require("H1", "never P201 and P202", builder.Not(builder.And(acidRuns, limeRuns)));
        return new CertifiedCase(
            sketch.Create("interlock"),
            builder.Not(builder.And(acidLast, limeLast)),
            acidLast);
    }

    /// <summary>A step may last 100 000 scans; its clock freezes on hold, and past the limit it is left.</summary>
    public static CertifiedCase Timer()
    {
        const long Limit = 100_000;
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression start = sketch.Input("R101.start");
        Expression hold = sketch.Input("R101.hold");
        Expression active = sketch.State("R101.step10.active");
        Expression clock = sketch.State("R101.step10.clock", 0, 200_000, 0);
        Expression due = builder.LessOrEqual(builder.Constant(Limit), clock);
        Expression stays = builder.And(active, builder.Not(due));
        Expression counted = builder.Minimum(builder.Add(clock, builder.Constant(1)), builder.Constant(200_000));
        sketch.Next(active, builder.Or(stays, builder.And(builder.Not(active), start)));
        sketch.Next(clock, builder.IfThenElse(stays, builder.IfThenElse(hold, clock, counted), builder.Constant(0L)));
        sketch.Require("H4", "never step 10 longer than 100 000 scans", builder.LessOrEqual(clock, builder.Constant(Limit)));
        return new CertifiedCase(
            sketch.Create("timer"),
            builder.LessOrEqual(clock, builder.Constant(Limit)),
            builder.LessOrEqual(clock, builder.Constant(Limit + 1)));
    }

    /// <summary>A response within a bound: the waiting is counted by a monitor, the answer by a clock of the program.</summary>
    public static CertifiedCase Monitor()
    {
        const long Delay = 600;
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression cause = sketch.Input("FSL120");
        Expression waiting = sketch.State("I9.clock", 0, Delay, 0);
        Expression since = sketch.State("H5.since", 0, 10_000, 0);
        Expression one = builder.Constant(1L);
        Expression open = builder.Or(cause, builder.Less(builder.Constant(0L), since));
        Expression answered = builder.And(builder.Equal(waiting, builder.Constant(Delay)), open);
        Expression going = builder.Or(cause, builder.Less(builder.Constant(0L), waiting));
        sketch.Next(waiting, builder.IfThenElse(builder.And(going, builder.Not(answered)), builder.Minimum(builder.Add(waiting, one), builder.Constant(Delay)), builder.Constant(0L)));
        sketch.Next(since, builder.IfThenElse(builder.And(open, builder.Not(answered)), builder.Minimum(builder.Add(since, one), builder.Constant(10_000)), builder.Constant(0L)));
        sketch.Output("XV205", answered);
        sketch.Require("H5", "after FSL120 within 600 scans XV205", builder.LessOrEqual(since, builder.Constant(Delay)));
        return new CertifiedCase(
            sketch.Create("monitor"),
            builder.Equal(since, waiting),
            builder.LessOrEqual(since, builder.Constant(Delay)));
    }
}
