using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A parameter that no condition and no dose uses.</summary>
internal sealed class ParameterNeverReadRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> read = new(
            context.Facts(program).Conditions.SelectMany(place => ConditionTree.Amounts(place.Condition))
                .Concat(program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>().SelectMany(Amounts))
                .Concat(program.Steps.SelectMany(step => step.Actions).OfType<AmountDoseAction>().Select(dose => dose.Of).OfType<Quantity>())
                .Concat(program.Steps.SelectMany(step => step.Actions).OfType<RecordAction>().Select(record => record.Value))
                .Concat(program.Steps.SelectMany(step => step.Actions).OfType<SetAction>().Select(set => set.Value))
                .OfType<ParameterQuantity>().Select(amount => amount.Parameter.Name),
            StringComparer.Ordinal);
        foreach (Parameter parameter in program.Parameters)
        {
            if (!read.Contains(parameter.Name))
            {
                context.Report(SignalDiagnostics.ParameterNeverRead(parameter));
            }
        }
    }

    private static IEnumerable<Quantity> Amounts(DoseAction dose) =>
        new[] { dose.Target, dose.FineWithin, dose.Maximum, dose.NoResponseChange }.OfType<Quantity>().SelectMany(ConditionTree.Amounts);
}
