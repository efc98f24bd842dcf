using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Proof.Insight;

namespace Sequencer.Sites.Insight;

/// <summary>Asks what is always so of one unit, by the names that its lowering gives to what it is made of.</summary>
internal sealed class UnitView
{
    private static readonly ImmutableArray<string> Commands = ["start", "hold", "restart", "stop", "abort", "reset"];

    private static readonly ImmutableArray<string> Reactions = ["asks_hold", "asks_stop", "asks_abort", "asks_emergency"];

    private readonly UnitProgram _unit;
    private readonly EveryScan _scans;
    private readonly Dictionary<string, Expression> _facts = new(StringComparer.Ordinal);
    private readonly ImmutableArray<Expression> _outputs;
    private readonly ImmutableArray<Expression> _analogues;
    private readonly Expression _stateAfter;
    private readonly List<ScanFact> _nobody = [];

    public UnitView(TransitionSystem system, UnitProgram unit, EveryScan scans)
    {
        _unit = unit;
        _scans = scans;
        ExpressionBuilder build = new();
        foreach (Variable variable in system.Inputs.Concat(system.States.Select(state => state.Variable)))
        {
            _facts.TryAdd(variable.Name, build.Variable(variable));
        }

        foreach (Definition definition in system.Definitions)
        {
            _facts[definition.Name] = definition.Value;
        }

        Dictionary<string, Expression> written = system.Outputs.ToDictionary(output => output.Name, output => output.Value, StringComparer.Ordinal);
        _outputs = [.. unit.Outputs.Select(output => written[output.Tag])];
        _analogues = [.. unit.AnalogueOutputs.Select(output => written[output.Tag])];
        _stateAfter = system.States.First(state => state.Variable.Name == $"{unit.Name}.state").Next;
        _nobody.AddRange(system.Inputs
            .Where(input => unit.Outputs.Any(output => input.Name == $"{output.Tag}.manual") || unit.AnalogueOutputs.Any(output => input.Name == $"{output.Tag}.manual")
                || input.Name.EndsWith(".override", StringComparison.Ordinal) || input.Name.EndsWith(".calibration", StringComparison.Ordinal))
            .Select(input => new ScanFact(_facts[input.Name], 0)));
    }

    /// <summary>The step goes on with its work.</summary>
    public Situation? AtWork(Step step) => Ask([.. Quiet(null), .. InStep(step), Fact(Own("state.now"), (long)step.State), StepNow(step)]);

    /// <summary>The operator's command, while the step is at work.</summary>
    public Situation? At(string command, Step step) => Ask([.. Quiet(command), .. InStep(step)]);

    /// <summary>The first scan after a loss of power that fell into the step.</summary>
    public Situation? AfterPowerLoss(Step step) => Ask([.. Quiet(null, powerReturned: true), .. InStep(step)]);

    /// <summary>The unit is Held in the step, and stays so.</summary>
    public Situation? HeldIn(Step step) =>
        Ask([.. Quiet(null), Fact(Own("state"), (long)ProceduralState.Held), StepActive(step), Fact(Own("state.now"), (long)ProceduralState.Held)]);

    /// <summary>The unit is in the state and stays so.</summary>
    public Situation? Resting(ProceduralState state) =>
        Ask([.. Quiet(null), Fact(Own("state"), (long)state), Fact(Own("state.now"), (long)state)]);

    /// <summary>An emergency, whatever the unit does.</summary>
    public Situation? InEmergency() => Ask([.. _nobody, Fact(Own("asks_emergency"), 1), Fact("power.returned", 0)]);

    /// <summary>The step goes on while a reading is not usable; null where the unit does not let it.</summary>
    public Situation? AtWorkWithBad(Step step, AnalogueInput input) => Bad(input) is { } bad
        ? Ask([.. Quiet(null), .. InStep(step), Fact(Own("state.now"), (long)step.State), StepNow(step), bad])
        : null;

    /// <summary>A reading is not usable while the step is at work, whatever the unit does about it.</summary>
    public Situation? WithBad(Step step, AnalogueInput input) => Bad(input) is { } bad
        ? Ask([.. Calm(null, powerReturned: false), .. InStep(step), bad])
        : null;

    /// <summary>No fault asks for anything, and nobody presses a button but the one named.</summary>
    private List<ScanFact> Quiet(string? command, bool powerReturned = false) =>
        [.. Calm(command, powerReturned), .. Reactions.Select(reaction => Fact(Own(reaction), 0))];

    private List<ScanFact> Calm(string? command, bool powerReturned) =>
    [
        .. _nobody,
        Fact("power.returned", powerReturned ? 1 : 0),
        .. powerReturned ? (ScanFact[])[] : [Fact(Own("ran"), 1)],
        .. Commands.Select(one => Fact(Own($"{one}.edge"), one == command ? 1 : 0)),
    ];

    private ScanFact[] InStep(Step step) => [Fact(Own("state"), (long)step.State), StepActive(step)];

    private ScanFact StepActive(Step step) => Fact(Own(FormattableString.Invariant($"step{step.Number}.active")), 1);

    private ScanFact StepNow(Step step) => Fact(Own(FormattableString.Invariant($"step{step.Number}.now")), 1);

    private ScanFact? Bad(AnalogueInput input) =>
        _facts.ContainsKey($"{input.Tag}.usable") ? Fact($"{input.Tag}.usable", 0) : null;

    private ScanFact Fact(string name, long value) => new(_facts[name], value);

    private string Own(string name) => $"{_unit.Name}.{name}";

    private Situation? Ask(IEnumerable<ScanFact> given)
    {
        ProceduralState[] states = Enum.GetValues<ProceduralState>();
        ScanFact[] asked =
        [
            .. _outputs.Select(output => new ScanFact(output, 1)),
            .. _analogues.Zip(_unit.AnalogueOutputs, (value, output) => new ScanFact(value, output.Safe)),
            .. states.Select(state => new ScanFact(_stateAfter, (long)state)),
        ];
        if (_scans.Judge(given, asked) is not { } seen)
        {
            return null;
        }

        ImmutableArray<string> Outputs(Seen how) => [.. _unit.Outputs.Where((_, index) => seen[index] == how).Select(output => output.Tag)];
        int analogues = _outputs.Length;
        return new Situation(
            Outputs(Seen.Always),
            Outputs(Seen.Sometimes),
            Outputs(Seen.Never),
            [.. _unit.AnalogueOutputs.Where((_, index) => seen[analogues + index] != Seen.Always).Select(output => output.Tag)],
            [.. states.Where((_, index) => seen[analogues + _analogues.Length + index] != Seen.Never)]);
    }
}
