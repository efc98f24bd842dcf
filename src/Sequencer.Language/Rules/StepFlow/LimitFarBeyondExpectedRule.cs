using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A limit many times the time that the step is expected to take: a decimal point out of place.</summary>
internal sealed class LimitFarBeyondExpectedRule : IProgramRule
{
    /// <summary>Wide, since a correction that finds its batch in the band at once is short (common practice, no source).</summary>
    private const int Times = 8;

    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            if (step.Expected is { } expected && step.Limit.Time.Milliseconds > Times * expected.Milliseconds)
            {
                context.Report(FlowDiagnostics.LimitFarBeyondExpected(step, expected, Times));
            }
        }
    }
}
