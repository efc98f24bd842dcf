using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// One checked program: names resolved, units and ranges checked, everything that waits limited.
/// Lists are in written order. The first step of the procedure and of each section is its initial one.
/// </summary>
public sealed record UnitProgram
{
    public required SourceText Source { get; init; }

    public required string Name { get; init; }

    public required string Title { get; init; }

    /// <summary>The <c>unit</c> line.</summary>
    public required SourceSpan Span { get; init; }

    public ImmutableArray<AnalogueInput> AnalogueInputs { get; init; } = [];

    public ImmutableArray<SwitchInput> SwitchInputs { get; init; } = [];

    public ImmutableArray<Output> Outputs { get; init; } = [];

    public ImmutableArray<AnalogueOutput> AnalogueOutputs { get; init; } = [];

    public ImmutableArray<Reagent> Reagents { get; init; } = [];

    public ImmutableArray<Parameter> Parameters { get; init; } = [];

    public ImmutableArray<Latch> Latches { get; init; } = [];

    public ImmutableArray<Count> Counts { get; init; } = [];

    public ImmutableArray<Vote> Votes { get; init; } = [];

    public ImmutableArray<ProtectionGroup> Groups { get; init; } = [];

    public ImmutableArray<PublishedFact> Facts { get; init; } = [];

    public ImmutableArray<Interlock> Interlocks { get; init; } = [];

    public ImmutableArray<Exclusion> Exclusions { get; init; } = [];

    public ImmutableArray<DutyPair> Pairs { get; init; } = [];

    /// <summary>Equipment of this unit that other units claim too.</summary>
    public ImmutableArray<SharedEquipment> Shared { get; init; } = [];

    public ImmutableArray<Permissive> Permissives { get; init; } = [];

    public ImmutableArray<Trip> Trips { get; init; } = [];

    public ImmutableArray<Override> Overrides { get; init; } = [];

    public ImmutableArray<Calibration> Calibrations { get; init; } = [];

    /// <summary>What is truly so beside some readings.</summary>
    public ImmutableArray<Real> Reals { get; init; } = [];

    public ImmutableArray<OperatorAlarm> Alarms { get; init; } = [];

    public ImmutableArray<AssumptionClause> Assumptions { get; init; } = [];

    public ImmutableArray<RequirementClause> Requirements { get; init; } = [];

    public ImmutableArray<StartCondition> StartConditions { get; init; } = [];

    /// <summary>The units that may ask this one to start.</summary>
    public ImmutableArray<Asker> Askers { get; init; } = [];

    /// <summary>The units that steps ask to start, each once.</summary>
    public IEnumerable<string> AskedUnits => Steps.SelectMany(step => step.Asks).Select(ask => ask.Unit).Distinct(StringComparer.Ordinal);

    /// <summary>Null where the unit may stay Held for ever.</summary>
    public HeldLimit? HeldLimit { get; init; }

    /// <summary>Null where steps go on by themselves only.</summary>
    public HandAdvance? HandAdvance { get; init; }

    /// <summary>All steps: those of the batch, then those of the sections.</summary>
    public ImmutableArray<Step> Steps { get; init; } = [];

    /// <summary>All transitions; of those that leave one step, the first written wins.</summary>
    public ImmutableArray<Transition> Transitions { get; init; } = [];

    /// <summary>The shared equipment that steps claim, each once, in the order of the procedure.</summary>
    public IEnumerable<string> ClaimedEquipment => Steps.SelectMany(step => step.Claims).Select(claim => claim.Equipment).Distinct(StringComparer.Ordinal);

    /// <summary>Outputs of other units that steps drive, each once.</summary>
    public IEnumerable<Output> DrivenElsewhere => Steps.SelectMany(step => step.Actions).OfType<DriveAction>().Select(drive => drive.Output)
        .Where(output => QualifiedName.IsForeign(output.Tag)).DistinctBy(output => output.Tag);

    /// <summary>How long Restarting lasts before Running; zero is one scan.</summary>
    public Duration RestartWait { get; init; }

    /// <summary>The states with steps: Running, and those that have a section.</summary>
    public IEnumerable<ProceduralState> StatesWithSteps => Steps.Select(step => step.State).Distinct();

    /// <summary>The first step of a state that has steps.</summary>
    public Step FirstStep(ProceduralState state) => Steps.First(step => step.State == state);
}
