using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A latch that a dosing output sets and a flush clears, where a hold neither flushes (a step of <c>holding</c>, the value while Held) nor raises an alarm or a trip that names it. A latch that nothing reads has a message of its own.</summary>
internal sealed class LineLeftDirtyRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> read = [.. context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<LatchFact>().Select(fact => fact.Latch)];
        foreach (Latch latch in program.Latches.Where(latch => read.Contains(latch.Name)))
        {
            Output? dosing = On(latch.Set).FirstOrDefault(output => output.Delivery is not null);
            Output? flush = On(latch.Clear).Concat(Confirmed(latch.Clear, program)).FirstOrDefault(output => output.Delivery is null);
            if (dosing is not null && flush is not null && !IsFlushedOnHold(flush, program) && !IsTold(latch, program))
            {
                context.Report(CourseDiagnostics.LineLeftDirty(latch, dosing, flush));
            }
        }
    }

    private static IEnumerable<Output> On(Condition condition) => ConditionTree.Facts(condition)
        .Where(signed => signed.Positive).Select(signed => signed.Fact).OfType<OutputFact>()
        .Where(fact => fact.Kind != OutputFactKind.Failed).Select(fact => fact.Output);

    private static IEnumerable<Output> Confirmed(Condition condition, UnitProgram program) => ConditionTree.Facts(condition)
        .Where(signed => signed.Positive).Select(signed => signed.Fact).OfType<SwitchFact>()
        .SelectMany(fact => program.Outputs.Where(output => output.Confirmation?.On.Tag == fact.Input.Tag));

    private static bool IsFlushedOnHold(Output flush, UnitProgram program) => (flush.Held is { } held && OutputUse.CanBeOn(held))
        || program.Steps.Any(step => step.State == ProceduralState.Holding && step.Actions.Any(action => OutputUse.SwitchesOn(action) && OutputUse.DrivenBy(action)?.Tag == flush.Tag));

    private static bool IsTold(Latch latch, UnitProgram program) => program.Alarms.Select(alarm => alarm.Condition)
        .Concat(program.Trips.Select(trip => trip.Condition))
        .Any(condition => ConditionTree.Parts(condition).OfType<LatchFact>().Any(fact => fact.Latch == latch.Name));
}
