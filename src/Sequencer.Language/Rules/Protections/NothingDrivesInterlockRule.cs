using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An interlock whose condition has no part that changes during a batch: only parameters, and outputs that are never on.</summary>
internal sealed class NothingDrivesInterlockRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        OutputUse use = context.Facts(program).Outputs;
        foreach (Interlock interlock in program.Interlocks)
        {
            if (!ConditionTree.Facts(interlock.Condition).Any(signed => Changes(signed.Fact, use)))
            {
                context.Report(ProtectionDiagnostics.NothingDrivesInterlock(interlock));
            }
        }
    }

    private static bool Changes(Condition fact, OutputUse use) => fact switch
    {
        ConstantCondition => false,
        OutputFact output => use.CanBeOn(output.Output),
        CompareFact or WithinFact => ConditionTree.Amounts(fact).Any(amount =>
            amount is ReadingQuantity || (amount is TotalQuantity total && use.CanBeOn(total.Output))),
        _ => true,
    };
}
