using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An interlock or permissive that needs another output to be on, and believes its command. That an output is off, and a block while one is on, may be taken from the command.</summary>
internal sealed class CommandTakenAsProofRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Interlock interlock in program.Interlocks)
        {
            Check(interlock.Condition, interlock.Form == InterlockForm.Unless, interlock.Name, context);
        }

        foreach (Permissive permissive in program.Permissives)
        {
            Check(permissive.Condition, true, permissive.Name, context);
        }
    }

    private static void Check(Condition condition, bool allows, string name, RuleContext context)
    {
        foreach (SignedFact signed in ConditionTree.Facts(condition, allows))
        {
            if (signed is { Positive: true, Fact: OutputFact { Kind: OutputFactKind.On } fact })
            {
                context.Report(SignalDiagnostics.CommandTakenAsProof(fact, name));
            }
        }
    }
}
