using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A way out of a step that holds whenever a way into it does; a step that a limit or a start leads into is let be.</summary>
internal sealed class TrueOnEntryRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph;
        HashSet<int> starts = [.. graph.Starts];
        for (int place = 0; place < graph.Steps.Length; place++)
        {
            List<StepWay> into = [.. graph.Ways.Where(way => way.To.Contains(place))];
            if (starts.Contains(place) || graph.Steps[place].OnlyIf is not null || into.Count == 0 || into.Exists(way => way.Transition is null))
            {
                continue;
            }

            foreach (Transition way in graph.Leaving[place].Select(way => graph.Ways[way]).Where(way => way.From.Length == 1).Select(way => way.Transition).OfType<Transition>())
            {
                if (ConditionTruth.CanBe(way.When, false)
                    && into.TrueForAll(entry => !ConditionTruth.CanAllBe([(entry.Transition!.When, true), (way.When, false)])))
                {
                    context.Report(CourseDiagnostics.TrueOnEntry(way, into[0].Transition!));
                }
            }
        }
    }
}
