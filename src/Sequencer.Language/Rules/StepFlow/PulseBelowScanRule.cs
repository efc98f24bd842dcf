using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A pulse shorter than a scan.</summary>
internal sealed class PulseBelowScanRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            Duration shortest = Pulses.Shortest(dose);
            if (shortest.Milliseconds < context.ScanMilliseconds)
            {
                context.Report(ProcedureDiagnostics.PulseBelowScan(dose, shortest, context.ScanMilliseconds));
            }
        }
    }
}
