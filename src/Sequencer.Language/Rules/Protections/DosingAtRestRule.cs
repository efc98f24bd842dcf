using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An output that doses a chemical and may rest on, or as it was.</summary>
internal sealed class DosingAtRestRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs)
        {
            if (OutputUse.DosesChemical(output, program.Reagents)
                && OutputUse.RestValues(output).FirstOrDefault(rest => rest.Last || OutputUse.CanBeOn(rest)) is { } on)
            {
                context.Report(SignalDiagnostics.DosingAtRest(output, on));
            }
        }
    }
}
