using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Systems;

/// <summary>
/// A made-up unit of a batch plant of the size the prover is for: procedural states, a chain of steps
/// with clocks, limits and in-band times, pulsed dosing with totals, a level with faults, a parameter
/// copied at the start, trips and interlocks. Step k doses from pump A if k is odd, else from pump B.
/// </summary>
internal sealed class BatchUnit
{
    private const int Idle = 0;
    private const int Running = 1;
    private const int Complete = 2;
    private const int Held = 4;
    private const int Aborted = 9;

    private readonly int _steps;
    private readonly int _scale;
    private readonly Expression[] _active;
    private readonly Expression[] _clock;
    private readonly Expression[] _stays;
    private readonly Expression[] _go;
    private readonly Expression[] _late;
    private readonly Dictionary<string, Expression> _names = [];

    private BatchUnit(int steps, int scale)
    {
        _steps = steps;
        _scale = scale;
        _active = new Expression[steps];
        _clock = new Expression[steps];
        _stays = new Expression[steps];
        _go = new Expression[steps];
        _late = new Expression[steps];
    }

    private Sketch Sketch { get; } = new();

    /// <param name="steps">How many steps, at least 2.</param>
    /// <param name="scale">Multiplies every time: at 1, limits are some hundred scans.</param>
    public static TransitionSystem Create(int steps, int scale)
    {
        BatchUnit unit = new(steps, scale);
        unit.Declare();
        unit.Move();
        unit.Pumps();
        unit.Require();
        return unit.Sketch.ToSystem();
    }

    private Expression this[string name]
    {
        get => _names[name];
        set => _names[name] = value;
    }

    private long Limit(int step) => (300L + (100 * step)) * _scale;

    private long Stays(int step) => (20L + step) * _scale;

    private void Declare()
    {
        foreach (string name in (string[])["start", "hold", "restart", "abort", "reset", "ES.contact", "YS.contact", "LT.fault", "power.returned"])
        {
            this[name] = Sketch.Input(name);
        }

        this["LT"] = Sketch.Input("LT", 0, 6000);
        this["AT"] = Sketch.Input("AT", 0, 1400);
        this["volume.setting"] = Sketch.Input("volume.setting", int.MinValue, int.MaxValue);
        this["state"] = Sketch.State("state", 0, 9, Idle);
        this["volume"] = Sketch.State("volume", 3000, 5000, 4500);
        this["trip"] = Sketch.State("trip");
        this["start.last"] = Sketch.State("start.last");
        this["LT.bad"] = Sketch.State("LT.bad", 0, 20, 0);
        this["overfill"] = Sketch.State("overfill");
        for (int step = 0; step < _steps; step++)
        {
            _active[step] = Sketch.State($"step{step}.active");
            _clock[step] = Sketch.State($"step{step}.clock", 0, Limit(step), 0);
            _stays[step] = Sketch.State($"step{step}.stays", 0, Stays(step), 0);
        }
    }

    private void Move()
    {
        Expression running = Sketch.Is(this["state"], Running);
        this["unusable"] = Sketch.Or(Sketch.AtLeast(this["LT.bad"], 20), this["LT.fault"]);
        Sketch.Clock(this["LT.bad"], this["LT.fault"]);
        Sketch.Next(this["start.last"], this["start"]);
        Expression setting = this["volume.setting"];
        Expression inRange = Sketch.And(Sketch.AtLeast(setting, 3000), Sketch.AtMost(setting, 5000));
        Expression starts = Sketch.And(this["start"], Sketch.Not(this["start.last"]), Sketch.Is(this["state"], Idle), inRange, Sketch.Not(this["trip"]));
        Sketch.Next(this["volume"], Sketch.Builder.IfThenElse(starts, Clamped(setting), this["volume"]));
        Sketch.Latch(this["trip"], Sketch.Not(this["ES.contact"]), Sketch.And(this["reset"], this["ES.contact"]));
        Sketch.Latch(this["overfill"], Sketch.Or(this["unusable"], Sketch.AtLeast(this["LT"], 5500)), Sketch.And(this["reset"], Sketch.AtMost(this["LT"], 5300), Sketch.Not(this["unusable"])));
        for (int step = 0; step < _steps; step++)
        {
            MoveStep(step, running, starts);
        }

        Expression late = Sketch.Or(_late);
        Expression finished = Sketch.And(_go[^1], running);
        Expression aborts = Sketch.Or(this["abort"], this["trip"]);
        Expression next = Sketch.Choose(
            this["state"],
            (Sketch.And(aborts, Sketch.Not(Sketch.Is(this["state"], Idle))), Aborted),
            (starts, Running),
            (finished, Complete),
            (Sketch.And(running, Sketch.Or(this["hold"], late, this["power.returned"])), Held),
            (Sketch.And(Sketch.Is(this["state"], Held), this["restart"]), Running),
            (Sketch.And(Sketch.Or(Sketch.Is(this["state"], Complete), Sketch.Is(this["state"], Aborted)), this["reset"]), Idle));
        Sketch.Next(this["state"], next);
    }

    private void MoveStep(int step, Expression running, Expression starts)
    {
        Expression active = _active[step];
        Expression inBand = step % 2 == 0
            ? Sketch.And(Sketch.Builder.GreaterOrEqual(this["LT"], this["volume"]), Sketch.Not(this["unusable"]))
            : Sketch.And(Sketch.AtLeast(this["AT"], 400 + (10 * step)), Sketch.AtMost(this["AT"], 430 + (10 * step)));
        Expression works = Sketch.And(active, running);
        Sketch.Clock(_stays[step], Sketch.And(works, inBand));
        _go[step] = Sketch.And(works, Sketch.AtLeast(_stays[step], Stays(step)), inBand);
        _late[step] = Sketch.And(works, Sketch.AtLeast(_clock[step], Limit(step)), Sketch.Not(_go[step]));
        Expression enters = step == 0 ? starts : _go[step - 1];
        Expression leaves = Sketch.Or(_go[step], Sketch.Is(this["state"], Aborted));
        Sketch.Next(active, Sketch.Or(enters, Sketch.And(active, Sketch.Not(leaves))));
        Expression counted = Sketch.Builder.IfThenElse(works, Sketch.CountedUp(_clock[step]), _clock[step]);
        Sketch.Next(_clock[step], Sketch.Builder.IfThenElse(Sketch.Or(enters, Sketch.Not(active)), Sketch.Builder.Constant(0L), counted));
    }

    private void Pumps()
    {
        Expression running = Sketch.Is(this["state"], Running);
        Expression odd = Sketch.And(Sketch.Or([.. _active.Where((_, step) => step % 2 == 1)]), running);
        Expression even = Sketch.And(Sketch.Or([.. _active.Where((_, step) => step % 2 == 0)]), running);
        foreach ((string pump, Expression demand, string other) in new[] { ("A", odd, "B"), ("B", even, "A") })
        {
            this[$"{pump}.pulse"] = Sketch.State($"{pump}.pulse", 0, 400 * _scale, 0);
            this[$"{pump}.total"] = Sketch.State($"{pump}.total", 0, 8000, 0);
            this[$"{pump}.gap"] = Sketch.State($"{pump}.gap", 0, 600 * _scale, 600 * _scale);
            this[$"{pump}.last"] = Sketch.State($"{pump}.last");
            this[$"{pump}.manual"] = Sketch.Input($"{pump}.manual");
            this[$"{pump}.demand"] = Sketch.Or(this[$"{pump}.manual"], Sketch.And(demand, Sketch.AtMost(this[$"{pump}.pulse"], 40 * _scale)));
        }

        foreach ((string pump, Expression demand, string other) in new[] { ("A", odd, "B"), ("B", even, "A") })
        {
            Expression full = Sketch.AtLeast(this[$"{pump}.total"], 7000);
            Expression blocked = Sketch.Or(Sketch.Not(this["YS.contact"]), this["trip"], full, Sketch.Not(Sketch.AtLeast(this[$"{other}.gap"], 600 * _scale)));
            this[pump] = Sketch.And(this[$"{pump}.demand"], Sketch.Not(blocked), pump == "A" ? Sketch.Builder.True : Sketch.Not(this["A"]));
            Expression pulse = this[$"{pump}.pulse"];
            Sketch.Next(pulse, Sketch.Builder.IfThenElse(Sketch.And(demand, Sketch.AtMost(pulse, (400 * _scale) - 1)), Sketch.CountedUp(pulse), Sketch.Builder.Constant(0L)));
            Sketch.Next(this[$"{pump}.total"], Sketch.Builder.IfThenElse(this[pump], Sketch.CountedUp(this[$"{pump}.total"]), this[$"{pump}.total"]));
            Expression gap = this[$"{pump}.gap"];
            Sketch.Next(gap, Sketch.Builder.IfThenElse(this[pump], Sketch.Builder.Constant(0L), Sketch.CountedUp(gap)));
            Sketch.Next(this[$"{pump}.last"], this[pump]);
        }
    }

    private void Require()
    {
        Sketch.Never("both pumps", this["A"], this["B"]);
        Sketch.Never("unmixed", Sketch.Or(this["A"], this["B"]), Sketch.Not(this["YS.contact"]));
        Sketch.Never("two steps", _active[0], _active[1]);
        Sketch.Never("first and last step", _active[0], _active[^1]);
        Sketch.Require("total", Sketch.AtMost(this["A.total"], 7000));
        Sketch.Never("volume", Sketch.Is(this["state"], Running), Sketch.Not(Sketch.AtLeast(this["volume"], 3000)));
        Sketch.Never("running while tripped for long", Sketch.Is(this["state"], Running), this["trip"], Monitor("trip.monitor", this["trip"], 2));
        Sketch.Never("A soon after B", this["A"], Sketch.Not(Since("B.monitor", this["B"], 600 * _scale)));
        Sketch.Never("step overdue", Monitor("step.monitor", Sketch.And(_active[1], Sketch.Is(this["state"], Running), Sketch.Not(Sketch.Is(this["state"], Held))), Limit(1) + 5));
        Sketch.Never("batch overdue", Monitor("batch.monitor", Sketch.Is(this["state"], Running), Enumerable.Range(0, _steps).Sum(step => Limit(step) + 2)));
        Sketch.Never("complete", Sketch.Is(this["state"], Complete));
        Sketch.Never("third step overdue", _late[Math.Min(2, _steps - 1)]);
        Sketch.Never("A dosed by pulses alone", Sketch.AtLeast(this["A.total"], 500), Sketch.Not(this["A.manual"]), Never("manual.never", this["A.manual"]));
    }

    /// <summary>True where the fact has held for more than the bound of scans without a break.</summary>
    private Expression Monitor(string name, Expression fact, long bound)
    {
        Expression count = Sketch.State(name, 0, bound + 1, 0);
        Sketch.Clock(count, fact);
        return Sketch.AtLeast(count, bound + 1);
    }

    /// <summary>True where the fact last held at least so many scans ago, or never did.</summary>
    private Expression Since(string name, Expression fact, long bound)
    {
        Expression count = Sketch.State(name, 0, bound, bound);
        Sketch.Next(count, Sketch.Builder.IfThenElse(fact, Sketch.Builder.Constant(0L), Sketch.CountedUp(count)));
        return Sketch.AtLeast(count, bound);
    }

    private Expression Never(string name, Expression fact)
    {
        Expression never = Sketch.State(name, true);
        Sketch.Next(never, Sketch.And(never, Sketch.Not(fact)));
        return never;
    }

    private Expression Clamped(Expression setting) =>
        Sketch.Builder.Maximum(Sketch.Builder.Constant(3000L), Sketch.Builder.Minimum(Sketch.Builder.Constant(5000L), setting));
}
