using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A kept action whose end is never come to, or that some way through the procedure passes by.</summary>
internal sealed class KeepWithoutEndRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph;
        for (int place = 0; place < graph.Steps.Length; place++)
        {
            foreach (KeepAction keep in graph.Steps[place].Actions.OfType<KeepAction>())
            {
                Check(keep, place, graph, context);
            }
        }
    }

    private static void Check(KeepAction keep, int place, StepGraph graph, RuleContext context)
    {
        Dictionary<int, int> cameFrom = new() { [place] = place };
        Queue<int> open = new([place]);
        bool ends = false;
        ImmutableArray<int> pastEnd = [];
        while (open.TryDequeue(out int step))
        {
            foreach (StepWay way in graph.Leaving[step].Select(way => graph.Ways[way]))
            {
                if (way.To.IsEmpty && pastEnd.IsEmpty)
                {
                    pastEnd = Path(cameFrom, place, step);
                }

                ends |= way.To.Any(to => graph.Steps[to].Number == keep.Until);
                foreach (int to in way.To.Where(to => graph.Steps[to].Number != keep.Until && !way.To.Any(beside => graph.Steps[beside].Number == keep.Until)))
                {
                    if (cameFrom.TryAdd(to, step))
                    {
                        open.Enqueue(to);
                    }
                }
            }
        }

        if (!ends)
        {
            context.Report(StepActionRuleDiagnostics.KeepNeverEnds(keep));
        }
        else if (!pastEnd.IsEmpty)
        {
            context.Report(StepActionRuleDiagnostics.KeepPassedBy(keep, string.Join(", ", pastEnd.Select(step => graph.Steps[step].Number))));
        }
    }

    private static ImmutableArray<int> Path(Dictionary<int, int> cameFrom, int first, int last)
    {
        List<int> path = [last];
        while (path[^1] != first)
        {
            path.Add(cameFrom[path[^1]]);
        }

        path.Reverse();
        return [.. path];
    }
}
