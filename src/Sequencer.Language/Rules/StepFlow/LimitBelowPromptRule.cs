using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A prompt that may stay unanswered as long as its step may last.</summary>
internal sealed class LimitBelowPromptRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (PromptAction prompt in step.Actions.OfType<PromptAction>().Where(prompt => prompt.Limit.Milliseconds >= step.Limit.Time.Milliseconds))
            {
                context.Report(StepActionRuleDiagnostics.LimitBelowPrompt(prompt, step));
            }
        }
    }
}
