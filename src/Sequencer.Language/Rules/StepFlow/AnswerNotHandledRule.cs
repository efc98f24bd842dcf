using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>An answer with which no way out of its step that asks about the prompt can be taken.</summary>
internal sealed class AnswerNotHandledRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (PromptAction prompt in step.Actions.OfType<PromptAction>())
            {
                Condition[] ways =
                [
                    .. program.Transitions.Where(way => way.From.Contains(step.Number)).Select(way => way.When)
                        .Where(when => ConditionTree.Parts(when).OfType<AnsweredFact>().Any(fact => fact.Prompt == prompt.Name)),
                ];
                for (int answer = 1; answer <= prompt.Answers.Length; answer++)
                {
                    AnsweredFact given = new(prompt.Name, answer, prompt.Span);
                    if (!ways.Any(when => ConditionTruth.CanAllBe([(when, true), (given, true)])))
                    {
                        context.Report(StepActionRuleDiagnostics.AnswerNotHandled(prompt, prompt.Answers[answer - 1], step));
                    }
                }
            }
        }
    }
}
