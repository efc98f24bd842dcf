using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A maximum a batch, at its lowest setting, of more than <see cref="TimesPossible"/> times what coarse pulses give within the limits of all steps that dose with the output. A step entered again may give more; so the margin.</summary>
internal sealed class MaximumOutOfReachRule : IProgramRule
{
    /// <summary>Our own choice: below this the maximum may still serve several visits to the step.</summary>
    public const int TimesPossible = 4;

    public void Check(UnitProgram program, RuleContext context)
    {
        IEnumerable<IGrouping<string, (Step Step, DoseAction Dose)>> byOutput = program.Steps
            .SelectMany(step => step.Actions.OfType<DoseAction>().Select(dose => (Step: step, Dose: dose)))
            .GroupBy(pair => pair.Dose.Output.Tag, StringComparer.Ordinal);
        foreach (IGrouping<string, (Step Step, DoseAction Dose)> doses in byOutput)
        {
            Rational possible = Rational.Zero;
            foreach ((Step step, DoseAction dose) in doses)
            {
                possible += Possible(step, dose, context.ScanMilliseconds);
            }

            foreach ((_, DoseAction dose) in doses)
            {
                if (possible.Sign > 0 && LinearForm.Of(dose.Maximum).Bounds() is var (maximum, _) && maximum > possible * TimesPossible)
                {
                    context.Report(ProcedureDiagnostics.MaximumOutOfReach(dose, Wording.Litres(maximum), Wording.Litres(possible)));
                }
            }
        }
    }

    private static Rational Possible(Step step, DoseAction dose, int scanMilliseconds)
    {
        long pulses = step.Limit.Time.Milliseconds / Math.Max(1, dose.Wait.Milliseconds + dose.Pulse.Milliseconds);
        return Pulses.LitresOf(dose, dose.Pulse, scanMilliseconds) is { } pulse ? pulse * pulses : Rational.Zero;
    }
}
