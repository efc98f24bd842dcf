using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An output that no step demands and that rests off in every state.</summary>
internal sealed class OutputNeverOnRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        OutputUse use = context.Facts(program).Outputs;
        foreach (Output output in program.Outputs)
        {
            if (!use.CanBeOn(output))
            {
                context.Report(SignalDiagnostics.OutputNeverOn(output));
            }
        }
    }
}
