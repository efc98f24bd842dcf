using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>Steps of a section that can follow one another in a circle, by whatever way.</summary>
internal sealed class SectionGoesRoundRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph;
        foreach (ImmutableArray<int> circle in graph.Circles())
        {
            Step first = graph.Steps[circle[0]];
            bool ownLimit = circle.Length == 1 && first.Limit.Target == first.Number;
            if (!first.IsOfBatch && !ownLimit)
            {
                context.Report(SectionDiagnostics.SectionGoesRound(first, string.Join(", ", circle.Select(step => graph.Steps[step].Number))));
            }
        }
    }
}
