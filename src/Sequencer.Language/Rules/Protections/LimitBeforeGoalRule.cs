using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Rules.Protections;

/// <summary>
/// An alarm, a trip or an interlock <c>from … until</c> on one reading that acts before a step reaches the limit
/// or the band that it waits for: on the way to it, or inside the band. An interlock counts where the step
/// switches on what it blocks.
/// </summary>
internal sealed class LimitBeforeGoalRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        List<(Condition Limit, string Name, string Acts, Interlock? Interlock)> limits =
        [
            .. program.Alarms.Select(alarm => (alarm.Condition, alarm.Name, "is raised", (Interlock?)null)),
            .. program.Trips.Select(trip => (trip.Condition, trip.Name, "trips", (Interlock?)null)),
            .. program.Interlocks.Where(interlock => interlock.Form == InterlockForm.FromUntil && !ReleaseBands.Overlap(interlock))
                .SelectMany(interlock => Parts(interlock.Condition).Select(part => (part, interlock.Name, "blocks", (Interlock?)interlock))),
        ];
        ILookup<int, Step> steps = program.Steps.ToLookup(step => step.Number);
        foreach ((Condition limit, string name, string acts, Interlock? interlock) in limits)
        {
            if (ReadingThreshold.Of(Untimed(limit)) is { } threshold
                && FirstBeyond(threshold, Wait(limit), interlock, program, steps) is var (step, goal))
            {
                context.Report(EquipmentDiagnostics.LimitBeforeGoal(limit.Span, name, acts, step, goal));
            }
        }
    }

    private static (Step Step, SourceSpan Goal)? FirstBeyond(ReadingThreshold limit, long wait, Interlock? interlock, UnitProgram program, ILookup<int, Step> steps)
    {
        foreach (Transition way in program.Transitions.Where(way => way.From.Length == 1))
        {
            Step step = steps[way.From[0]].First();
            Condition goal = Untimed(way.When);
            if (wait < step.Limit.Time.Milliseconds && (interlock is null || Drives(step, interlock)) && (ReadingThreshold.Of(goal) is { } end ? limit.ComesBefore(end) : goal is WithinFact band && LiesIn(limit, band)))
            {
                return (step, goal.Span);
            }
        }

        return null;
    }

    private static bool LiesIn(ReadingThreshold limit, WithinFact band) =>
        band.Value is ReadingQuantity reading && reading.Input.Tag == limit.Input.Tag
        && LinearForm.Of(band.Lower).Bounds() is var (_, lower) && LinearForm.Of(band.Upper).Bounds() is var (upper, _)
        && limit.Low > lower && limit.High < upper;

    private static bool Drives(Step step, Interlock interlock) => step.Actions
        .Any(action => OutputUse.SwitchesOn(action) && interlock.Outputs.Any(output => output.Tag == OutputUse.DrivenBy(action)?.Tag));

    private static ImmutableArray<Condition> Parts(Condition condition) => condition is AnyOf any ? any.Conditions : [condition];

    /// <summary>How long, in milliseconds, the condition must last: one that outlasts the step is not met on the way to its goal.</summary>
    private static long Wait(Condition condition) => condition is StaysFact stays ? stays.Time.Milliseconds : 0;

    private static Condition Untimed(Condition condition) => condition switch
    {
        StaysFact stays => stays.Condition,
        LingersFact lingers => lingers.Condition,
        _ => condition,
    };
}
