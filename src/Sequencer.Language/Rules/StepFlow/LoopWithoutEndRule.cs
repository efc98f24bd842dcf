using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>Steps of the batch that can follow one another in a circle, none of which has a limit that leads out of it. How often a circle is turned while its limits are kept is not decided.</summary>
internal sealed class LoopWithoutEndRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph;
        foreach (ImmutableArray<int> circle in graph.Circles())
        {
            if (graph.Steps[circle[0]].IsOfBatch && !circle.Any(step => LeadsOut(graph.Steps[step], circle, graph)) && !IsOwnLimit(circle, graph))
            {
                string numbers = string.Join(", ", circle.Select(step => graph.Steps[step].Number));
                context.Report(FlowDiagnostics.LoopWithoutEnd(graph.Steps[circle[0]], numbers));
            }
        }
    }

    private static bool LeadsOut(Step step, ImmutableArray<int> circle, StepGraph graph) => step.Limit.GoTo is not null
        ? !circle.Any(place => graph.Steps[place].Number == step.Limit.Target)
        : step.Limit.Reaction != Reaction.Alarm;

    /// <summary>A limit that leads to its own step has a diagnostic of its own.</summary>
    private static bool IsOwnLimit(ImmutableArray<int> circle, StepGraph graph) =>
        circle is [var only] && graph.Steps[only].Limit.Target == graph.Steps[only].Number;
}
