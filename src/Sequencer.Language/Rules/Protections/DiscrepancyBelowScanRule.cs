using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A device that must confirm in less than a scan.</summary>
internal sealed class DiscrepancyBelowScanRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs)
        {
            if (output.Confirmation is { } confirmation && confirmation.Within.Milliseconds < context.ScanMilliseconds)
            {
                context.Report(SignalDiagnostics.DiscrepancyBelowScan(output, confirmation, context.ScanMilliseconds));
            }
        }
    }
}
