using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An interlock whose condition has no part that changes during a batch: only parameters. An output that is never on has a message of its own.</summary>
internal sealed class NothingDrivesInterlockRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Interlock interlock in program.Interlocks)
        {
            if (!ConditionTree.Facts(interlock.Condition).Any(signed => Changes(signed.Fact)))
            {
                context.Report(ProtectionDiagnostics.NothingDrivesInterlock(interlock));
            }
        }
    }

    private static bool Changes(Condition fact) => fact switch
    {
        ConstantCondition => false,
        CompareFact or WithinFact => ConditionTree.Amounts(fact).Any(amount => amount is ReadingQuantity or TotalQuantity or CountQuantity),
        _ => true,
    };
}
