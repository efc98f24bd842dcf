using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An output that is on without power, rests off, and is kept off by an interlock or an exclusion.</summary>
internal sealed class PowerLossOpensRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs.Where(output => output.DeEnergised && !output.Safe.Last && !OutputUse.CanBeOn(output.Safe)))
        {
            string? keeper = program.Interlocks.Where(interlock => interlock.Outputs.Any(blocked => blocked.Tag == output.Tag)).Select(interlock => interlock.Name)
                .Concat(program.Exclusions.Where(exclusion => exclusion.Outputs.Any(blocked => blocked.Tag == output.Tag)).Select(exclusion => exclusion.Name))
                .FirstOrDefault();
            if (keeper is not null)
            {
                context.Report(EquipmentDiagnostics.PowerLossOpens(output, keeper));
            }
        }
    }
}
