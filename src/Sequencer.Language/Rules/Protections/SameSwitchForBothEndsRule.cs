using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A valve confirmed open and closed by one switch.</summary>
internal sealed class SameSwitchForBothEndsRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs)
        {
            if (output.Confirmation is { Off: { } off } confirmation && off.Tag == confirmation.On.Tag)
            {
                context.Report(SignalDiagnostics.SameSwitchForBothEnds(output, confirmation));
            }
        }
    }
}
