using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A pulse near the target that is not shorter than the one far from it.</summary>
internal sealed class FinePulseNotFinerRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            if (dose.FinePulse is { } fine && fine.Milliseconds >= dose.Pulse.Milliseconds)
            {
                context.Report(ProcedureDiagnostics.FinePulseNotFiner(dose, fine));
            }
        }
    }
}
