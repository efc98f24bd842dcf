using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A way whose <c>stays</c> takes as long as the limit of the step that it leaves. Looks at what must hold: all of an <c>and</c>, none of an <c>or</c>.</summary>
internal sealed class LimitBelowStaysRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        Dictionary<int, Step> steps = [];
        foreach (Step step in program.Steps)
        {
            steps.TryAdd(step.Number, step);
        }

        foreach (Transition way in program.Transitions)
        {
            foreach (int number in way.From)
            {
                if (steps.TryGetValue(number, out Step? step) && Needed(way.When).FirstOrDefault(stays => stays.Time.Milliseconds >= step.Limit.Time.Milliseconds) is { } late)
                {
                    context.Report(FlowDiagnostics.LimitBelowStays(late, step));
                }
            }
        }
    }

    private static IEnumerable<StaysFact> Needed(Condition when)
    {
        Stack<Condition> open = new([when]);
        while (open.TryPop(out Condition? condition))
        {
            if (condition is StaysFact stays)
            {
                yield return stays;
                open.Push(stays.Condition);
            }
            else if (condition is AllOf all)
            {
                foreach (Condition part in all.Conditions)
                {
                    open.Push(part);
                }
            }
        }
    }
}
