using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A maximum a batch, at its lowest setting, of more than <see cref="TimesPossible"/> times what coarse pulses give in the step's limit. A step entered again may give more; so the margin.</summary>
internal sealed class MaximumOutOfReachRule : IProgramRule
{
    /// <summary>Our own choice: below this the maximum may still serve several visits to the step.</summary>
    public const int TimesPossible = 4;

    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                long pulses = step.Limit.Time.Milliseconds / Math.Max(1, dose.Wait.Milliseconds + dose.Pulse.Milliseconds);
                if (pulses > 0
                    && Pulses.LitresOf(dose, dose.Pulse, context.ScanMilliseconds) is { } pulse
                    && LinearForm.Of(dose.Maximum).Bounds() is var (maximum, _)
                    && maximum > pulse * pulses * TimesPossible)
                {
                    context.Report(ProcedureDiagnostics.MaximumOutOfReach(dose, step, Wording.Litres(maximum), Wording.Litres(pulse * pulses)));
                }
            }
        }
    }
}
