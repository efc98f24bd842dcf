using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>Steps of the batch that can follow one another in a circle, none of which has a limit that leads out of it. Where limits lead out of a circle of `go` lines, one of them still needs a count.</summary>
internal sealed class LoopWithoutEndRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph.Only(way => way.Transition?.AtMost is null);
        foreach (ImmutableArray<int> circle in graph.Circles())
        {
            HashSet<int> within = [.. circle.Select(step => graph.Steps[step].Number)];
            if (graph.Steps[circle[0]].IsOfBatch && !circle.Any(step => LeadsOut(graph.Steps[step], within)) && !IsOwnLimit(circle, graph))
            {
                string numbers = string.Join(", ", circle.Select(step => graph.Steps[step].Number));
                context.Report(FlowDiagnostics.LoopWithoutEnd(graph.Steps[circle[0]], numbers));
            }
        }

        HashSet<Transition> chattering = new(StepsChatterRule.Chattering(program).Select(pair => pair.Second), ReferenceEqualityComparer.Instance);
        foreach (ImmutableArray<int> circle in graph.Only(way => way.Transition is not null && !chattering.Contains(way.Transition)).Circles())
        {
            HashSet<int> within = [.. circle.Select(step => graph.Steps[step].Number)];
            if (graph.Steps[circle[0]].IsOfBatch && circle.Any(step => LeadsOut(graph.Steps[step], within)) && Back(circle, graph) is { } back)
            {
                context.Report(StepActionRuleDiagnostics.LoopWithoutCount(back, string.Join(", ", circle.Select(step => graph.Steps[step].Number))));
            }
        }
    }

    /// <summary>The way from the last step of the circle back to an earlier one.</summary>
    private static Transition? Back(ImmutableArray<int> circle, StepGraph graph)
    {
        HashSet<int> members = [.. circle];
        return circle.SelectMany(step => graph.Leaving[step]).Distinct().Order().Select(way => graph.Ways[way])
            .Where(way => way.Transition is not null && way.To.Any(to => members.Contains(to) && to <= way.From.Max()))
            .Select(way => way.Transition).FirstOrDefault();
    }

    private static bool LeadsOut(Step step, HashSet<int> circle) => step.Limit.GoTo is not null
        ? step.Limit.Target is not { } target || !circle.Contains(target)
        : step.Limit.Reaction != Reaction.Alarm;

    /// <summary>A limit that leads to its own step has a diagnostic of its own.</summary>
    private static bool IsOwnLimit(ImmutableArray<int> circle, StepGraph graph) =>
        circle is [var only] && graph.Steps[only].Limit.Target == graph.Steps[only].Number;
}
