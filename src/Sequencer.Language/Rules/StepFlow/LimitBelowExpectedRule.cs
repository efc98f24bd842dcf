using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A limit shorter than the time that the step is expected to take.</summary>
internal sealed class LimitBelowExpectedRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            if (step.Expected is { } expected && step.Limit.Time.Milliseconds < expected.Milliseconds)
            {
                context.Report(FlowDiagnostics.LimitBelowExpected(step, expected));
            }
        }
    }
}
