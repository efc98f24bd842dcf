using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A reagent that no output delivers.</summary>
internal sealed class ReagentNeverDeliveredRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Reagent reagent in program.Reagents)
        {
            if (!program.Outputs.Any(output => output.Delivery?.Reagent.Name == reagent.Name))
            {
                context.Report(SignalDiagnostics.ReagentNeverDelivered(reagent));
            }
        }
    }
}
