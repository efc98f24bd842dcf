using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Proof;
using Sequencer.Proof.Insight;

namespace Sequencer.Sites.Insight;

/// <summary>One unit against hold, stop, abort, loss of power and its instruments, step by step.</summary>
internal sealed record StepSheet(
    UnitProgram Unit,
    ImmutableArray<(string Words, Situation? What)> Rests,
    ImmutableArray<StepRow> Rows,
    ImmutableArray<InstrumentRow> Instruments,
    ImmutableArray<InstrumentUse> Uses)
{
    private static readonly ImmutableArray<ProceduralState> Resting =
        [ProceduralState.Idle, ProceduralState.Held, ProceduralState.Stopped, ProceduralState.Aborted, ProceduralState.Complete];

    /// <summary>The steps of the sections, at work.</summary>
    public ImmutableArray<(Step Step, Situation? Works)> Sections { get; init; } = [];

    /// <summary>One sheet a unit, in the order of the site.</summary>
    public static ImmutableArray<StepSheet> Of(SiteProgram site, TransitionSystem system, IEnumerable<Verdict> verdicts, Questions questions, CancellationToken cancellation)
    {
        Verdict[] proved = [.. verdicts];
        return questions.Each("steps", site.Units, (unit, _) =>
        {
            EveryScan scans = EveryScan.Of(system, proved, OneStepAtATime(system, unit), cancellation);
            return Of(site, unit, new UnitView(system, unit, scans));
        });
    }

    private static StepSheet Of(SiteProgram site, UnitProgram unit, UnitView view)
    {
        ImmutableArray<StepRow> rows =
        [
            .. unit.Steps.Where(step => step.IsOfBatch).Select(step =>
            {
                Situation? works = view.AtWork(step);
                return new StepRow(step, works, view.At("hold", step), view.HeldIn(step), view.At("stop", step), view.At("abort", step), view.AfterPowerLoss(step), Requirements(site, unit, works));
            }),
        ];
        return new StepSheet(
            unit,
            [.. Resting.Select(state => (state.ToString(), view.Resting(state))), ("emergency, in any state", view.InEmergency())],
            rows,
            [.. rows.SelectMany(row => InstrumentsOf(unit, row, view))],
            InstrumentUse.Of(site, unit))
        {
            Sections = [.. unit.Steps.Where(step => !step.IsOfBatch).Select(step => (step, view.AtWork(step)))],
        };
    }

    private static IEnumerable<InstrumentRow> InstrumentsOf(UnitProgram unit, StepRow row, UnitView view)
    {
        foreach (AnalogueInput input in unit.AnalogueInputs)
        {
            Situation? bad = view.AtWorkWithBad(row.Step, input);
            bool leaves = bad is null;
            bad ??= view.WithBad(row.Step, input);
            ImmutableArray<string> waits = Waits(unit, row.Step, input.Tag);
            ImmutableArray<string> acts = Acts(row.Step, input.Tag);
            if (waits.Length + acts.Length > 0 || (bad is not null && row.Works is not null && (leaves || !bad.StopsOf(row.Works).IsEmpty)))
            {
                yield return new InstrumentRow(row.Step, input.Tag, CanBeBad: true, bad, leaves, waits, acts);
            }
        }

        foreach (SwitchInput input in unit.SwitchInputs)
        {
            ImmutableArray<string> waits = Waits(unit, row.Step, input.Tag);
            ImmutableArray<string> acts = Acts(row.Step, input.Tag);
            if (waits.Length + acts.Length > 0)
            {
                yield return new InstrumentRow(row.Step, input.Tag, CanBeBad: false, null, false, waits, acts);
            }
        }
    }

    /// <summary>The ways out of the step that look at the instrument.</summary>
    private static ImmutableArray<string> Waits(UnitProgram unit, Step step, string tag) =>
    [
        .. TransitionOrder.Of(unit).Where(way => way.From.Contains(step.Number) && InstrumentUse.Tags(way.When).Contains(tag))
            .Select(way => way.To.IsEmpty ? "go finish" : $"go {string.Join(", ", way.To)}").Distinct(StringComparer.Ordinal),
    ];

    /// <summary>What the step does by the instrument.</summary>
    private static ImmutableArray<string> Acts(Step step, string tag) =>
    [
        .. step.Actions.SelectMany(action => action switch
        {
            DriveAction drive when InstrumentUse.Tags(drive.While).Concat(InstrumentUse.Tags(drive.Until)).Concat(InstrumentUse.Tags(drive.AtEach)).Contains(tag) => (string[])[drive.Output.Tag],
            DoseAction dose when dose.Signal.Tag == tag => [$"dose {dose.Output.Tag}"],
            AmountDoseAction { Of: { } basis } dose when ConditionTree.Amounts(basis).OfType<ReadingQuantity>().Any(reading => reading.Input.Tag == tag) => [$"dose {dose.Output.Tag}"],
            _ => [],
        }).Distinct(StringComparer.Ordinal),
    ];

    /// <summary>The unit's requirements that name an output which may be on while the step works.</summary>
    private static ImmutableArray<string> Requirements(SiteProgram site, UnitProgram unit, Situation? works) =>
    [
        .. unit.Requirements.Where(clause => Conditions(clause.Fact).SelectMany(ConditionTree.OutputTags).Any(tag => works is not null && (works.On.Contains(tag) || works.Maybe.Contains(tag))))
            .Select(clause => site.NameOf(unit, clause.Name)),
    ];

    private static IEnumerable<Condition> Conditions(RequiredFact fact) => fact switch
    {
        RequiredNever never => [never.Condition],
        RequiredAlways { While: { } during } always => [always.Condition, during],
        RequiredAlways always => [always.Condition],
        RequiredResponse { GoalCondition: { } goal } response => [response.Trigger, goal],
        RequiredResponse response => [response.Trigger],
        _ => [],
    };

    /// <summary>Guesses: no two steps of the unit are active together; what a step keeps going is stored, or is not, in each of them.</summary>
    private static List<Expression> OneStepAtATime(TransitionSystem system, UnitProgram unit)
    {
        ExpressionBuilder build = new();
        Dictionary<string, Variable> states = system.States.ToDictionary(state => state.Variable.Name, state => state.Variable, StringComparer.Ordinal);
        Expression[] active =
        [
            .. unit.Steps.Select(step => FormattableString.Invariant($"{unit.Name}.step{step.Number}.active")).Where(states.ContainsKey).Select(name => build.Variable(states[name])),
        ];
        Expression[] kept =
        [
            .. states.Values.Where(state => state.Name.StartsWith($"{unit.Name}.step", StringComparison.Ordinal) && state.Name.Contains(".keep_", StringComparison.Ordinal))
                .Select(build.Variable),
        ];
        Expression state = build.Variable(states[$"{unit.Name}.state"]);
        ProceduralState[] keeping = [ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting];
        Expression inProgress = build.Or(keeping.Select(one => build.Equal(state, build.Constant((long)one))));
        List<Expression> guesses = [];
        foreach (Expression store in kept)
        {
            guesses.AddRange(active.Select(step => build.Not(build.And(step, store))));
            guesses.AddRange(active.Select(step => build.Implies(build.And(step, inProgress), store)));
        }

        for (int first = 0; first < active.Length; first++)
        {
            for (int second = first + 1; second < active.Length; second++)
            {
                guesses.Add(build.Not(build.And(active[first], active[second])));
            }
        }

        return guesses;
    }
}
