using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A check on response after no pulse.</summary>
internal sealed class NoResponseCountRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            if (dose.NoResponsePulses < 1)
            {
                context.Report(ProcedureDiagnostics.NoResponseCount(dose));
            }
        }
    }
}
