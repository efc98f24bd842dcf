using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A step of the batch that can be left, drives something on, and only alarms after its limit.</summary>
internal sealed class LimitOnlyAlarmsRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph;
        for (int place = 0; place < graph.Steps.Length; place++)
        {
            Step step = graph.Steps[place];
            List<Output> driven = [.. step.Actions.Where(OutputUse.SwitchesOn).Select(OutputUse.DrivenBy).OfType<Output>().Distinct()];
            if (driven.Count > 0 && step is { IsOfBatch: true, Limit: { Reaction: Reaction.Alarm, GoTo: null } } && !graph.Leaving[place].IsEmpty)
            {
                context.Report(FlowDiagnostics.LimitOnlyAlarms(step, Wording.List(driven, output => output.Tag)));
            }
        }
    }
}
