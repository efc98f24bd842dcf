using Sequencer.Language.Binding;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>What is truly so in the plant, in a condition or an action that a controller would have to judge.</summary>
internal sealed class RealOutsideRequirementRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        if (program.Reals.IsEmpty)
        {
            return;
        }

        IEnumerable<Quantity> acted = program.Steps.SelectMany(step => step.Actions).SelectMany(action => action switch
        {
            RecordAction record => [record.Value],
            DoseAction dose => [dose.Target],
            _ => Array.Empty<Quantity>(),
        });
        IEnumerable<Quantity> judged = context.Facts(program).Conditions
            .Where(place => place.Role != ConditionRole.Requirement).SelectMany(place => ConditionTree.Amounts(place.Condition));
        foreach (RealQuantity real in judged.Concat(acted).SelectMany(QuantityMeasure.Leaves).OfType<RealQuantity>().DistinctBy(real => real.Span))
        {
            context.Report(CountDiagnostics.RealOutsideRequirement(real.Span, real.Real.Name, real.Real.Input.Tag));
        }
    }
}
