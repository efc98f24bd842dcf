using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A condition that asks whether an output is proved, or has failed, which has no confirmation.</summary>
internal sealed class ProvedWithoutConfirmationRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (OutputFact fact in context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<OutputFact>())
        {
            if (fact.Kind != OutputFactKind.On && fact.Output.Confirmation is null)
            {
                context.Report(SignalDiagnostics.ProvedWithoutConfirmation(fact));
            }
        }
    }
}
