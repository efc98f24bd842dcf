using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A check on response that any reading passes.</summary>
internal sealed class NoResponseChangeRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            if (LinearForm.Of(dose.NoResponseChange).Bounds() is { Low.Sign: <= 0 })
            {
                context.Report(ProcedureDiagnostics.NoResponseChange(dose));
            }
        }
    }
}
