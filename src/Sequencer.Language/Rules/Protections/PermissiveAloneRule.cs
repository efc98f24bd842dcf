using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An output that doses a chemical and that a permissive guards, but no interlock.</summary>
internal sealed class PermissiveAloneRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs.Where(output => OutputUse.DosesChemical(output, program.Reagents)))
        {
            if (!program.Interlocks.Any(interlock => interlock.Outputs.Any(blocked => blocked.Tag == output.Tag))
                && program.Permissives.FirstOrDefault(permissive => permissive.Outputs.Any(guarded => guarded.Tag == output.Tag)) is { } alone)
            {
                context.Report(ProtectionDiagnostics.PermissiveAlone(alone, output));
            }
        }
    }
}
