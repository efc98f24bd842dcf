using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A maximum a batch, at its highest setting, that is less than the smallest pulse gives.</summary>
internal sealed class MaximumBelowPulseRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            if (Pulses.LitresOf(dose, Pulses.Shortest(dose), context.ScanMilliseconds) is { } pulse
                && LinearForm.Of(dose.Maximum).Bounds() is var (_, maximum)
                && maximum < pulse)
            {
                context.Report(ProcedureDiagnostics.MaximumBelowPulse(dose, Wording.Litres(maximum), Wording.Litres(pulse)));
            }
        }
    }
}
