using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>One analogue output set by two lines that can act at once: in one step, or in two that can be active together.</summary>
internal sealed class ConflictingSetsRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ProgramFacts facts = context.Facts(program);
        foreach (AnalogueOutput output in program.AnalogueOutputs)
        {
            (int Step, StepAction Action)[] sets =
            [
                .. Enumerable.Range(0, program.Steps.Length).SelectMany(step => program.Steps[step].Actions.Where(action => Sets(action, output)).Select(action => (step, action))),
            ];
            for (int second = 1; second < sets.Length; second++)
            {
                (int Step, StepAction Action)? first = sets.Take(second).Cast<(int Step, StepAction Action)?>()
                    .FirstOrDefault(first => facts.Situations.Pairs.CanBeTogether(first.GetValueOrDefault().Step, sets[second].Step));
                if (first is { } found)
                {
                    context.Report(StepActionRuleDiagnostics.ConflictingSets(
                        sets[second].Action, found.Action, output.Tag, program.Steps[sets[second].Step].Number, program.Steps[found.Step].Number));
                }
            }
        }
    }

    private static bool Sets(StepAction action, AnalogueOutput output) =>
        (action is SetAction set && set.Output.Tag == output.Tag) || (action is RampAction ramp && ramp.Output.Tag == output.Tag);
}
