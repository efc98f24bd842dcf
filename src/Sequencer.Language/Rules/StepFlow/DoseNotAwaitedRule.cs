using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A dose by amount whose step can be left by a way that asks neither for the dose nor for the output's total.</summary>
internal sealed class DoseNotAwaitedRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ILookup<int, Transition> leaving = program.Transitions.SelectMany(way => way.From.Select(from => (From: from, Way: way))).ToLookup(pair => pair.From, pair => pair.Way);
        foreach (Step step in program.Steps)
        {
            foreach (AmountDoseAction dose in step.Actions.OfType<AmountDoseAction>().Where(dose => dose.Of is not TotalQuantity))
            {
                Transition? early = leaving[step.Number].FirstOrDefault(way => !Awaits(way.When, dose));
                if (early is not null && !leaving[step.Number].Any(way => Awaits(way.When, dose)))
                {
                    context.Report(StepActionRuleDiagnostics.DoseNotAwaited(early, dose, step));
                }
            }
        }
    }

    private static bool Awaits(Condition condition, AmountDoseAction dose) =>
        ConditionTree.Parts(condition).OfType<DosedFact>().Any(fact => fact.Output.Tag == dose.Output.Tag)
        || ConditionTree.Amounts(condition).OfType<TotalQuantity>().Any(total => total.Output.Tag == dose.Output.Tag);
}
