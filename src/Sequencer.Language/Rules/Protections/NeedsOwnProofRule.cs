using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>An interlock <c>unless</c> or a permissive that cannot be true while the confirmation of an output that it guards is off.</summary>
internal sealed class NeedsOwnProofRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Interlock interlock in program.Interlocks.Where(interlock => interlock.Form == InterlockForm.Unless))
        {
            Check(interlock.Outputs, interlock.Condition, interlock.Name, context);
        }

        foreach (Permissive permissive in program.Permissives)
        {
            Check(permissive.Outputs, permissive.Condition, permissive.Name, context);
        }
    }

    private static void Check(ImmutableArray<Output> outputs, Condition condition, string name, RuleContext context)
    {
        foreach (Output output in outputs)
        {
            if (output.Confirmation is { } confirmation && ConditionTruth.CanBe(condition, true)
                && !ConditionTruth.CanAllBe(
                [
                    (condition, true),
                    (new SwitchFact(confirmation.On, confirmation.Span), false),
                    (new OutputFact(output, OutputFactKind.Proved, confirmation.Span), false),
                ]))
            {
                context.Report(ProtectionDiagnostics.NeedsOwnProof(condition.Span, name, output));
            }
        }
    }
}
