using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A restart that would go on in another branch, or ahead of where the step stands.</summary>
internal sealed class RestartElsewhereRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        Lazy<ILookup<int, int>> next = new(() => TransitionOrder.Of(program)
            .Where(way => way.From.Length == 1 && way.To.Length == 1)
            .ToLookup(way => way.From[0], way => way.To[0]));
        foreach (Step step in program.Steps)
        {
            if (step.RestartAt is { } point && (!step.IsOfBatch || !LeadsTo(next.Value, point.Step, step.Number)))
            {
                context.Report(CourseDiagnostics.RestartElsewhere(point, step));
            }
        }
    }

    /// <summary>One step after the other, without a branch that opens or joins between.</summary>
    private static bool LeadsTo(ILookup<int, int> next, int from, int to)
    {
        HashSet<int> seen = [from];
        Stack<int> open = new([from]);
        while (open.TryPop(out int step))
        {
            if (step == to)
            {
                return true;
            }

            foreach (int behind in next[step].Where(seen.Add))
            {
                open.Push(behind);
            }
        }

        return false;
    }
}
