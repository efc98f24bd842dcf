using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An interlock or exclusion on an output whose safe value can be on, or is the last one.</summary>
internal sealed class BlockForcesOnRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Interlock interlock in program.Interlocks)
        {
            Check(interlock.Outputs, interlock.Span, interlock.Name, context);
        }

        foreach (Exclusion exclusion in program.Exclusions)
        {
            Check(exclusion.Outputs, exclusion.Span, exclusion.Name, context);
        }
    }

    private static void Check(ImmutableArray<Output> outputs, SourceSpan span, string name, RuleContext context)
    {
        foreach (Output output in outputs)
        {
            if (output.Safe.Last || OutputUse.CanBeOn(output.Safe))
            {
                context.Report(ProtectionDiagnostics.BlockForcesOn(span, name, output));
            }
        }
    }
}
