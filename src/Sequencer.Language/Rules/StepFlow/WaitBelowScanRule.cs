using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A dose whose wait between its pulses is shorter than a scan.</summary>
internal sealed class WaitBelowScanRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            if (dose.Wait.Milliseconds < context.ScanMilliseconds)
            {
                context.Report(ProcedureDiagnostics.WaitBelowScan(dose, context.ScanMilliseconds));
            }
        }
    }
}
