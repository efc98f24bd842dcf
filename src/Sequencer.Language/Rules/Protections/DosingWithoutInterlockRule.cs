using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An output that doses a chemical, in no interlock and no permissive.</summary>
internal sealed class DosingWithoutInterlockRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs.Where(output => OutputUse.DosesChemical(output, program.Reagents)))
        {
            if (!program.Interlocks.SelectMany(interlock => interlock.Outputs).Concat(program.Permissives.SelectMany(permissive => permissive.Outputs))
                .Any(guarded => guarded.Tag == output.Tag))
            {
                context.Report(ProtectionDiagnostics.DosingWithoutInterlock(output));
            }
        }
    }
}
