using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Lowering;

/// <summary>
/// One scan of one unit: what conditions and stages ask of each other, in the order of
/// <c>spec/meaning.md</c>. Each part is lowered by the class that it is handed to.
/// </summary>
internal sealed class UnitScan
{
    private FinalOutputs? _finals;

    public UnitScan(SiteScan site, UnitProgram unit)
    {
        Site = site;
        Unit = unit;
        Sight = new Sight(this);
        Shown = new ShownSignals(this);
        Roles = new Roles(this);
        Overrides = new Overrides(this);
        Calibrations = new Calibrations(this);
        Votes = new Votes(this);
        Signals = new Signals(this);
        Memory = new OutputMemory(this);
        Settings = new BatchSettings(this);
        Commands = new OperatorCommands(this);
        Assumptions = new Assumptions(this);
        Situation = new Situation(this);
        Latches = new Latches(this);
        Facts = new PublishedFacts(this);
        Discrepancies = new Discrepancies(this);
        Doses = new Doses(this);
        Prompts = new Prompts(this);
        Requests = new StartRequests(this);
        Counts = new Counts(this);
        Reals = new Reals(this);
        State = new StateMachine(this);
        Claims = new UnitClaims(this);
        Trips = new Trips(this);
        Pairs = new Pairs(this);
        Analogues = new AnalogueOutputs(this);
        Watch = new MemoryWatch(this);
    }

    public SystemBuilder System => Site.System;

    /// <summary>The rest values worked out so far, by tag and row.</summary>
    public Dictionary<string, Expression> RestValues { get; } = new(StringComparer.Ordinal);

    public SiteScan Site { get; }

    public ExpressionBuilder Build => System.Expressions;

    public UnitProgram Unit { get; }

    public int ScanMilliseconds => System.ScanMilliseconds;

    public Sight Sight { get; }

    public ShownSignals Shown { get; }

    public Overrides Overrides { get; }

    public Votes Votes { get; }

    public Pairs Pairs { get; }

    public Signals Signals { get; }

    public OutputMemory Memory { get; }

    public BatchSettings Settings { get; }

    public OperatorCommands Commands { get; }

    public Assumptions Assumptions { get; }

    public Situation Situation { get; }

    public Latches Latches { get; }

    public PublishedFacts Facts { get; }

    public Discrepancies Discrepancies { get; }

    public Doses Doses { get; }

    public Prompts Prompts { get; }

    /// <summary>Starts that the unit asks others for, and is asked for.</summary>
    public StartRequests Requests { get; }

    public Counts Counts { get; }

    public Reals Reals { get; }

    public Roles Roles { get; }

    public Calibrations Calibrations { get; }

    public AnalogueOutputs Analogues { get; }

    public StateMachine State { get; }

    public UnitClaims Claims { get; }

    public Trips Trips { get; }

    public MemoryWatch Watch { get; }

    /// <summary>Every output has its emergency value in this scan.</summary>
    public Expression Emergency => Build.Or(Trips.Ask(Reaction.Emergency), Watch.Latched);

    /// <summary>What may name other units is lowered when the states of all are declared.</summary>
    public void LowerProtections()
    {
        Trips.Lower();
        _finals = new FinalOutputs(this);
    }

    /// <summary>The unit's procedural state in this scan is Running.</summary>
    public Expression RunningNow => State.IsNow(ProceduralState.Running);

    /// <summary>The unit's procedural state in this scan is the one that the step works in, and the step has what it claims.</summary>
    public Expression WorksNow(Step step) => Build.And(State.IsNow(step.State), Claims.Owns(step));

    public Expression Switch(SwitchInput input) => Signals.Switch(input);

    public Expression Reading(AnalogueInput input) => Signals.Reading(input);

    public Expression Usable(AnalogueInput input) => Signals.Usable(input);

    public Expression LastWritten(Output output) => Memory.Last(output);

    public Expression Total(Output output) => Memory.Total(output);

    public Expression Final(Output output) => Finals.Of(output);

    public FinalOutputs Finals => _finals ?? throw new InvalidOperationException("the protections are not lowered yet");

    public Expression BatchValue(Parameter parameter) => Settings.BatchValue(parameter);

    public Expression Confirms(Output output, Expression on) => Discrepancies.Confirms(output, on);

    public Expression DiscrepancyAtStart(Output output) => Discrepancies.AtStart(output);

    public Expression LatchAtStart(string latch) => Latches.AtStart(latch);

    public Expression TripAtStart(string trip) => Trips.AtStart(trip);

    public Expression StepAtStart(int step) => Situation.AtStart(step);

    public Expression StepNow(int step) => Situation.Now(step);

    public Expression Activated(int step) => Situation.Activated(step);

    public Expression PulseAtStart(Step step) => Doses.PulseAtStart(step);

    public Expression StateAtStartIs(ProceduralState state) => State.WasAtStart(state);

    /// <summary>What the site calls something that the unit declares and that is no tag: a trip, an interlock, a requirement.</summary>
    public string Own(string name) => Site.Program.NameOf(Unit, name);

    /// <summary>A name below the unit's own, as <c>R101.state</c>.</summary>
    public string Named(string name) => $"{Unit.Name}.{name}";

    public string StepNamed(int step, string name) => FormattableString.Invariant($"{Unit.Name}.step{step}.{name}");
}
