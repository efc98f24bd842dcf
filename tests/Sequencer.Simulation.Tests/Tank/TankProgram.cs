using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Metadata;
using Sequencer.Text;

namespace Sequencer.Simulation.Tests.Tank;

/// <summary>A hand-made controller for <see cref="TankPlant"/>: fill, dose in pulses for a minute, drain.</summary>
internal sealed class TankProgram
{
    private const long Idle = 0;
    private const long Running = 1;
    private const long Complete = 2;
    private const long Held = 4;
    private const long Aborted = 9;
    private const long DoseScans = 600;
    private const long CycleScans = 100;
    private const long PulseScans = 20;

    private readonly ExpressionBuilder _build = new();
    private readonly List<Variable> _inputs = [];
    private readonly List<Variable> _states = [];
    private readonly Origin _origin = new(new SourceText("tank.seq", "unit R101\n").At(0, 4));

    public static TransitionSystem System() => new TankProgram().Make();

    public static SiteMetadata Site { get; } = new("Tank farm", "tank-0001")
    {
        Signals =
        [
            new("LT101", SignalKind.Analogue, "m3", 0.001m, "Tank volume"),
            new("AT101", SignalKind.Analogue, "pH", 0.01m, "Tank pH"),
            new("LSHH101", SignalKind.Switch, "", 1, "Tank at high-high level"),
            new("P101", SignalKind.Output, "", 1, "Feed pump"),
            new("P102", SignalKind.Output, "", 1, "Drain pump"),
            new("P201", SignalKind.Output, "", 1, "Acid dosing pump"),
            new("P201.total", SignalKind.Total, "L", 0.02m, "Acid given this batch"),
            new("R101.fill_volume", SignalKind.Parameter, "m3", 0.001m, "Volume of a batch", 4.5m),
        ],
        Steps =
        [
            new("R101", "10", "Fill", 660, 1800),
            new("R101", "20", "Lower pH", 30, 120),
            new("R101", "30", "Drain"),
        ],
        Reagents = [new("P201", "ACID", 12)],
        DischargeLimits = [new("TK101.pH", "pH of what is left", 6, 9.5), new("sewer.volume", "Volume of a batch", null, 4)],
        Marks = [new("LT101", "fill", 4.5), new("LT101", "trip", 5.5), new("AT101", "low", 9.1), new("AT101", "high", 9.4)],
        Convert = Units,
    };

    private static decimal? Units(decimal value, string from, string to) => (from, to) switch
    {
        ("L", "m3") => value / 1000,
        ("m3", "L") => value * 1000,
        _ => null,
    };

    private TransitionSystem Make()
    {
        Expression level = Input("LT101", 0, 6000);
        Expression levelBad = Input("LT101.fault");
        Input("AT101", 0, 1400);
        Input("AT101.fault");
        Expression high = _build.Not(Input("LSHH101.contact"));
        Expression start = Input("R101.start");
        Expression hold = Input("R101.hold");
        Expression restart = Input("R101.restart");
        Expression abort = Input("R101.abort");
        Expression returned = Input("power.returned");
        Expression manual = Input("P101.manual");
        Expression demand = Input("P101.manual.demand");
        Expression setting = Input("R101.fill_volume.setting", 3000, 5000);

        Expression state = State("R101.state", 0, 9);
        Expression[] steps = [State("R101.step10.active"), State("R101.step20.active"), State("R101.step30.active")];
        Expression clock = State("R101.step20.clock", 0, DoseScans);
        Expression phase = State("R101.step20.phase", 0, CycleScans - 1);
        Expression batch = State("R101.fill_volume.batch", 0, 5000);
        Expression total = State("P201.total", 0, 100_000);

        Expression running = _build.And(Is(state, Running), _build.Not(returned));
        Expression begins = _build.And(Is(state, Idle), start);
        Expression go20 = _build.And(running, steps[0], _build.Not(levelBad), _build.GreaterOrEqual(level, batch));
        Expression go30 = _build.And(running, steps[1], _build.Equal(clock, _build.Constant(DoseScans)));
        Expression done = _build.And(running, steps[2], _build.LessOrEqual(level, _build.Constant(100)));
        Expression dosing = _build.And(running, steps[1], _build.Less(phase, _build.Constant(PulseScans)), _build.Not(go30));
        Expression filling = _build.And(_build.Or(_build.And(running, steps[0]), _build.And(manual, demand)), _build.Not(high), _build.Not(_build.And(manual, _build.Not(demand))));

        Expression next = Choose(
            (abort, _build.Constant(Aborted)),
            (begins, _build.Constant(Running)),
            (done, _build.Constant(Complete)),
            (_build.And(Is(state, Running), _build.Or(hold, returned)), _build.Constant(Held)),
            (_build.And(Is(state, Held), restart), _build.Constant(Running)),
            state);
        Expression ticking = _build.And(running, steps[1], _build.Less(clock, _build.Constant(DoseScans)));
        Expression cycled = _build.IfThenElse(_build.Equal(phase, _build.Constant(CycleScans - 1)), _build.Constant(0), _build.Minimum(_build.Add(phase, _build.Constant(1)), _build.Constant(CycleScans - 1)));
        Expression[] nexts =
        [
            next,
            _build.Or(begins, _build.And(steps[0], _build.Not(go20))),
            _build.Or(go20, _build.And(steps[1], _build.Not(go30))),
            _build.Or(go30, _build.And(steps[2], _build.Not(done))),
            Choose((go20, _build.Constant(0)), (ticking, _build.Minimum(_build.Add(clock, _build.Constant(1)), _build.Constant(DoseScans))), clock),
            Choose((go20, _build.Constant(0)), (running, cycled), phase),
            _build.IfThenElse(begins, setting, batch),
            Choose((begins, _build.Constant(0)), (dosing, _build.Minimum(_build.Add(total, _build.Constant(1)), _build.Constant(100_000))), total),
        ];
        return TransitionSystem.Create(
            "Tank farm",
            100,
            [.. _inputs],
            [.. _states.Select((variable, index) => new StateVariable(variable, 0, nexts[index], true, StatePurpose.Control, _origin))],
            [new OutputVariable("P101", filling, _origin), new OutputVariable("P102", _build.And(running, steps[2]), _origin), new OutputVariable("P201", dosing, _origin)],
            [new Definition("LSHH101", high, _origin)],
            [],
            [],
            [new Alarm("A1", "Tank at high-high level", high, _origin), new Alarm("A2", "Tank volume: channel bad", levelBad, _origin)]);
    }

    private Expression Is(Expression state, long value) => _build.Equal(state, _build.Constant(value));

    private Expression Choose((Expression When, Expression Then) first, Expression otherwise) => _build.IfThenElse(first.When, first.Then, otherwise);

    private Expression Choose((Expression When, Expression Then) first, (Expression When, Expression Then) second, Expression otherwise) =>
        Choose(first, Choose(second, otherwise));

    private Expression Choose(
        (Expression When, Expression Then) first,
        (Expression When, Expression Then) second,
        (Expression When, Expression Then) third,
        (Expression When, Expression Then) fourth,
        (Expression When, Expression Then) fifth,
        Expression otherwise) =>
        Choose(first, Choose(second, Choose(third, Choose(fourth, fifth, otherwise))));

    private Expression Input(string name, long minimum = 0, long maximum = 1) => Add(_inputs, VariableRole.Input, name, minimum, maximum);

    private Expression State(string name, long minimum = 0, long maximum = 1) => Add(_states, VariableRole.State, name, minimum, maximum);

    private Expression Add(List<Variable> variables, VariableRole role, string name, long minimum, long maximum)
    {
        Sort sort = maximum == 1 ? Sort.Boolean : Sort.Integer;
        Variable variable = new(name, role, variables.Count, sort, new IntegerRange(minimum, maximum));
        variables.Add(variable);
        return _build.Variable(variable);
    }
}
