using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A step that waits in a join, and whose own limit, after the least time expected of its branch, is over before the other branch is expected to be ready. Branches are taken from the <c>go … and …</c> that opens them, along the ways of least expected time that leave single steps; a step without <c>expect</c> counts nothing.</summary>
internal sealed class LimitBelowOtherBranchRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph;
        foreach (StepWay join in graph.Ways.Where(way => way.From.Length > 1))
        {
            foreach (StepWay fork in graph.Ways.Where(way => way.To.Length > 1))
            {
                Compare(graph, fork, join, context);
            }
        }
    }

    private static void Compare(StepGraph graph, StepWay fork, StepWay join, RuleContext context)
    {
        Dictionary<int, long> ready = [];
        foreach (int head in fork.To)
        {
            Dictionary<int, long> begins = graph.ExpectedMilliseconds(head);
            foreach (int last in join.From)
            {
                if (begins.TryGetValue(last, out long start))
                {
                    ready[last] = Math.Min(start, ready.GetValueOrDefault(last, long.MaxValue));
                }
            }
        }

        if (ready.Count != join.From.Length)
        {
            return;
        }

        int slowest = join.From.MaxBy(step => ready[step] + (graph.Steps[step].Expected?.Milliseconds ?? 0));
        long there = ready[slowest] + (graph.Steps[slowest].Expected?.Milliseconds ?? 0);
        foreach (int step in join.From)
        {
            long here = ready[step] + graph.Steps[step].Limit.Time.Milliseconds;
            if (step != slowest && here < there)
            {
                context.Report(ProcedureDiagnostics.LimitBelowOtherBranch(graph.Steps[step], graph.Steps[slowest].Number, new Duration(there), new Duration(here)));
            }
        }
    }
}
